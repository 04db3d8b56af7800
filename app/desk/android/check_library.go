package android

import (
	"bytes"
	"debug/elf"
	"slices"
)

// checkLibrary checks the requirements of a phone's linker, and returns the
// names that the library exports.
func checkLibrary(p *problems, data []byte, known []string) (exports []string) {
	f, err := elf.NewFile(bytes.NewReader(data))
	if err != nil {
		p.add("%s: %v", library, err)
		return nil
	}
	if f.Machine != elf.EM_AARCH64 || f.Type != elf.ET_DYN {
		p.add("%s is made for %v and of type %v; wanted is a shared library for arm64", library, f.Machine, f.Type)
	}
	for _, s := range f.Progs {
		if s.Type != elf.PT_LOAD {
			continue
		}
		if s.Flags&(elf.PF_W|elf.PF_X) == elf.PF_W|elf.PF_X {
			p.add("%s: the segment at %#x may be written and run, which Android refuses", library, s.Off)
		}
		if s.Align < pageSize || s.Vaddr%pageSize != s.Off%pageSize {
			p.add("%s: the segment at %#x is aligned to %d; pages of %d need more", library, s.Off, s.Align, pageSize)
		}
	}
	if name, err := f.DynString(elf.DT_SONAME); err != nil || len(name) != 1 || name[0] != library {
		p.add("%s calls itself %q", library, name)
	}
	if text, err := f.DynValue(elf.DT_TEXTREL); err != nil || len(text) > 0 {
		p.add("%s has its code altered while it is loaded, which Android refuses", library)
	}
	needed, err := f.ImportedLibraries()
	if err != nil {
		p.add("%s: %v", library, err)
	}
	for _, n := range needed {
		if !slices.Contains(publicLibraries, n) {
			p.add("%s needs %s, which apps may not use", library, n)
		}
	}
	return append(exports, checkNames(p, f, known)...)
}

// checkNames checks the names that the library imports, and returns those that
// it exports.
func checkNames(p *problems, f *elf.File, known []string) (exports []string) {
	all, err := f.DynamicSymbols()
	if err != nil {
		p.add("%s: %v", library, err)
	}
	for _, s := range all {
		switch {
		case s.Section != elf.SHN_UNDEF:
			exports = append(exports, s.Name)
		case !slices.Contains(known, s.Name):
			p.add("%s leaves the name %s to the phone; look it up in bionic's and the NDK's reference, and if it is there since Android 8, add it to names.txt",
				library, s.Name)
		}
	}
	for _, name := range []string{"ANativeActivity_onCreate", "JNI_OnLoad", "main.main"} {
		if !slices.Contains(exports, name) {
			p.add("%s offers no %s, with which the system and the toolkit begin", library, name)
		}
	}
	return exports
}
