package kalman

// backEta propagates η backward through a step: Fᵀη.
func (f *transition) backEta(eta *Vec) {
	eta[B] += f.vb * eta[V]
	eta[C] *= f.c
	eta[K] = f.k*eta[K] + f.vk*eta[V]
}

// backInfo propagates Λ backward through a step: FᵀΛF.
func (f *transition) backInfo(l *Sym) {
	l.VC, l.BC, l.CD, l.CW = l.VC*f.c, l.BC*f.c, l.CD*f.c, l.CW*f.c
	l.VK, l.BK, l.KD, l.KW = l.VK*f.k, l.BK*f.k, l.KD*f.k, l.KW*f.k
	l.CC, l.CK, l.KK = l.CC*f.c*f.c, l.CK*f.c*f.k, l.KK*f.k*f.k

	l.BB += f.vb * (2*l.VB + f.vb*l.VV)
	l.BK += f.vb*l.VK + f.vk*l.VB + f.vb*f.vk*l.VV
	l.KK += f.vk * (2*l.VK + f.vk*l.VV)
	l.VB += f.vb * l.VV
	l.VK += f.vk * l.VV
	l.BC += f.vb * l.VC
	l.CK += f.vk * l.VC
	l.BD += f.vb * l.VD
	l.KD += f.vk * l.VD
	l.BW += f.vb * l.VW
	l.KW += f.vk * l.VW
}

// backEta propagates η backward through an observation: η + h·(e/r - gᵀη).
func (o *seen) backEta(eta *Vec) {
	f := o.innovation/o.variance - dot(&o.gain, eta)
	eta[V] += f
	eta[C] += f * o.h.c
	eta[D] += f * o.h.d
	eta[W] += f * o.h.w
}

// backInfo propagates Λ backward through an observation. With u = Λg that is Λ
// - h·uᵀ - u·hᵀ + (gᵀu + 1/r)·h·hᵀ, or Λ - h·tᵀ - t·hᵀ where t = u - (gᵀu +
// 1/r)/2·h.
func (o *seen) backInfo(l *Sym) {
	c := l.columns()
	var t Vec
	for i := V; i < N; i++ {
		t[i] = dot(&c[i], &o.gain)
	}
	f, h := (dot(&t, &o.gain)+1/o.variance)/2, o.h
	t[V] -= f
	t[C] -= f * h.c
	t[D] -= f * h.d
	t[W] -= f * h.w
	l.VV -= 2 * t[V]
	l.VB -= t[B]
	l.VC -= t[C] + h.c*t[V]
	l.VK -= t[K]
	l.VD -= t[D] + h.d*t[V]
	l.VW -= t[W] + h.w*t[V]
	l.BC -= h.c * t[B]
	l.BD -= h.d * t[B]
	l.BW -= h.w * t[B]
	l.CC -= 2 * h.c * t[C]
	l.CK -= h.c * t[K]
	l.CD -= h.c*t[D] + h.d*t[C]
	l.CW -= h.c*t[W] + h.w*t[C]
	l.KD -= h.d * t[K]
	l.KW -= h.w * t[K]
	l.DD -= 2 * h.d * t[D]
	l.DW -= h.d*t[W] + h.w*t[D]
	l.WW -= 2 * h.w * t[W]
}
