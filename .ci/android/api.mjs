// Looks up every call into Android that the driver's C and the packed classes
// make, in declarations that the NativeScript project generates from Android's
// own classes: that there is a method of that name with those parameters and
// that result, and since when. The doubles were written by the author of the
// calls; these declarations were not. They do not tell an int from a long.
import { readFileSync, readdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const here = dirname(fileURLToPath(import.meta.url))
const root = join(here, '..', '..')
const oldest = 26 // minSdkVersion of the manifest

// Calls to what came later; the code asks for the version of Android before it
// makes them.
const guarded = new Map(Object.entries({
	'android.app.Service.startForeground': 29, // with types
	'android.os.PowerManager.getLocationPowerSaveMode': 28,
	'android.app.ActivityManager.isBackgroundRestricted': 28,
	'android.app.ActivityManager.getHistoricalProcessExitReasons': 30,
	'android.app.ApplicationExitInfo.getReason': 30,
	'android.app.Notification.Builder.setForegroundServiceBehavior': 31,
	'android.app.Notification.Action.Builder.setAuthenticationRequired': 31,
	'android.provider.MediaStore.Downloads.EXTERNAL_CONTENT_URI': 29,
}))

// declared reads the declarations: for each name, the methods and fields of
// that name with their class, parameters, result and the API they came with.
function declared(text) {
	const all = new Map()
	const names = [] // of the blocks that are open
	let since = 1
	for (const line of text.split('\n')) {
		const mark = line.match(/@since (\d+)/)
		if (mark) { since = Number(mark[1]); continue }
		const block = line.match(/^\s*(?:declare |export )?(?:abstract )?(module|namespace|class|interface) ([\w.]+).*\{\s*$/)
		const member = line.match(/^\s*(?:public |protected )(static )?(\w+)(\(.*\))?(?:: (.*))?;\s*$/)
		if (block) names.push(block[2])
		else if (/\{\s*$/.test(line)) names.push('')
		else if (/^\s*\}/.test(line)) names.pop()
		else if (member) {
			const m = { in: names.filter(Boolean).join('.'), static: !!member[1], since,
				takes: member[3] === undefined ? null : parameters(member[3].slice(1, -1)), gives: plain(member[4] ?? 'void') }
			const name = member[2]
			if (!all.has(name)) all.set(name, [])
			all.get(name).push(m)
		}
		since = 1
	}
	return all
}

function parameters(list) {
	const out = []
	let depth = 0, from = 0
	for (let i = 0; i <= list.length; i++) {
		if ('<({'.includes(list[i] ?? ' ') && list[i]) depth++
		else if ('>)}'.includes(list[i] ?? ' ') && list[i]) depth--
		else if ((list[i] === ',' && depth === 0) || i === list.length) {
			const part = list.slice(from, i)
			if (part.trim()) out.push(plain(part.slice(part.indexOf(':') + 1)))
			from = i + 1
		}
	}
	return out
}

const plain = type => type.replace(/ \| null/g, '').replace(/<.*>$/, '').trim()

// types turns a signature of Java's virtual machine into those of the
// declarations.
function types(signature) {
	const out = []
	for (const m of signature.matchAll(/\[*(?:L[^;]+;|[ZBCSIJFDV])/g)) {
		if (m[0].startsWith('[')) out.push('androidNative.Array')
		else if (m[0] === 'Ljava/lang/String;' || m[0] === 'Ljava/lang/CharSequence;') out.push('string')
		else if (m[0] === 'Ljava/lang/Object;') out.push('any')
		else if (m[0].startsWith('L')) out.push(m[0].slice(1, -1).replace(/[/$]/g, '.'))
		else out.push({ Z: 'boolean', V: 'void' }[m[0]] ?? 'number')
	}
	return out
}

const alike = (a, b) => a === b || a === 'any' || b === 'any'

// calls finds what C calls: a class where it is named, the name, the signature.
function callsOfC(text) {
	const macros = new Map([...text.matchAll(/^#define (\w+) (".*")$/gm)].map(m => [m[1], m[2]]))
	const joined = s => [...s.matchAll(/"([^"]*)"|(\w+)/g)].map(m => m[1] ?? joined(macros.get(m[2]) ?? '')).join('')
	const out = []
	const literal = '((?:"[^"]*"|[A-Z_]+)(?:\\s*(?:"[^"]*"|[A-Z]+))*)'
	for (const m of text.matchAll(new RegExp(`still_(?:object|int|long|double|float|boolean|void)\\(&?j, (?:[^"]*?), "(\\w+)",\\s*${literal}`, 'g')))
		out.push({ name: m[1], signature: joined(m[2]) })
	for (const m of text.matchAll(new RegExp(`still_(?:static|static_object|constant)\\(&?j, "([^"]+)", "(\\w+)"(?:,\\s*${literal})?`, 'g')))
		out.push({ of: m[1], name: m[2], signature: m[3] ? joined(m[3]) : 'I', static: true })
	for (const m of text.matchAll(new RegExp(`still_new\\(&?j, "([^"]+)",\\s*${literal}`, 'g')))
		out.push({ of: m[1], name: 'constructor', signature: joined(m[2]) })
	return out
}

const callsOfSmali = text => [...text.matchAll(/(?:invoke-\w+ \{[^}]*\}, L([^;]+);->(<?\w+>?)(\(\S*\)\S+))/g)]
	.map(m => ({ of: m[1], name: m[2] === '<init>' ? 'constructor' : m[2], signature: m[3] }))
	.filter(c => !/^(?:java\/|org\/golang\/)/.test(c.of))

// found looks a call up. Where the class is one of ours, or not named, any
// class will do that has such a method.
function found(c, all) {
	const method = c.signature.startsWith('(')
	const takes = method ? types(c.signature.slice(1, c.signature.indexOf(')'))) : null
	const gives = types(c.signature.slice(c.signature.indexOf(')') + 1))[0]
	const of = c.of && !c.of.startsWith('stillair/') ? c.of.replace(/[/$]/g, '.') : null
	const fits = m => (!of || m.in === of) && !(c.static && !m.static) && (m.takes === null) === !method &&
		(!method || (m.takes.length === takes.length && takes.every((t, i) => alike(t, m.takes[i])))) &&
		(!method || c.name === 'constructor' || alike(gives, m.gives))
	return (all.get(c.name) ?? []).filter(fits)
}

const platform = join(here, 'node_modules', '@nativescript', 'types-android', 'lib', 'android', 'android-platform-37.d.ts')
const all = declared(readFileSync(platform, 'utf8'))
const driver = join(root, 'sensors', 'device', 'android')
const smali = join(root, 'app', 'desk', 'android', 'files', 'smali', 'stillair', 'phone')
const sources = [...readdirSync(driver).filter(n => n.endsWith('.c')).map(n => [n, callsOfC(readFileSync(join(driver, n), 'utf8'))]),
	...readdirSync(smali).map(n => [n, callsOfSmali(readFileSync(join(smali, n), 'utf8'))])]
let looked = 0, wrong = 0
for (const [file, calls] of sources) {
	for (const c of calls) {
		if (c.of?.startsWith('java/') || (c.of?.startsWith('stillair/') && /^(tell|told|show|hold)$/.test(c.name))) continue
		looked++
		const those = found(c, all)
		const since = Math.min(...those.map(m => m.since))
		const kept = those.some(m => (guarded.get(`${m.in}.${c.name}`) ?? oldest) >= m.since)
		if (those.length > 0 && (since <= oldest || kept)) continue
		wrong++
		console.log(`${file}: ${c.of ?? ''} ${c.name} ${c.signature}: ` + (those.length ? `came with API ${since}; is it guarded?` : 'Android has no such thing'))
	}
}
// The numbers by which the manifest is encoded: those of its attributes, and of
// the changes that do not restart the activity.
const values = join(root, 'app', 'desk', 'android', 'files', 'framework', 'res', 'values')
const numbers = [...readFileSync(join(values, 'public.xml'), 'utf8').matchAll(/type="(\w+)" name="(\w+)" id="(0x[0-9a-f]+)"/g)]
	.map(m => ({ of: `android.R.${m[1]}`, name: m[2], is: Number(m[3]) }))
const changes = readFileSync(join(values, 'attrs.xml'), 'utf8').match(/<attr name="configChanges">([^]*?)<\/attr>/)[1]
for (const m of changes.matchAll(/flag name="(\w+)" value="(0x[0-9a-f]+)"/g))
	numbers.push({ of: 'android.content.pm.ActivityInfo', name: 'CONFIG_' + m[1].replace(/[A-Z]/g, '_$&').toUpperCase(), is: Number(m[2]) })
for (const n of numbers) {
	const those = (all.get(n.name) ?? []).filter(m => m.in === n.of).map(m => Number(m.gives))
	if (those.includes(n.is)) continue
	wrong++
	console.log(`${n.of}.${n.name} is ${n.is} here and ${those.join(', ') || 'not'} there`)
}
console.log(`${numbers.length} numbers, ${looked} calls looked up in the declarations of API 37, ${wrong} wrong`)
process.exit(wrong > 0 || looked < 80 || numbers.length < 30 ? 1 : 0)
