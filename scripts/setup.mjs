// Set-up shared by `npm start` and `npm test`: the packages, the build, a browser for the tests.
// Plain Node with no dependency, so that it runs in a fresh clone.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = dirname(dirname(fileURLToPath(import.meta.url)))
const at = (...parts) => join(root, ...parts)

/** Runs a command; returns its exit code. */
export function run(command, args, options = {}) {
  const done = spawnSync(command, args, { cwd: root, stdio: 'inherit', ...options })
  if (done.error) console.error(`${command}: ${done.error.message}`)
  return done.status ?? 1
}

/** A tool of node_modules/.bin. */
export function tool(name, args, options = {}) {
  const script = at('node_modules', '.bin', name)
  return run(script, args, options)
}

function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number)
  if (major < 20 || (major === 20 && minor < 19)) {
    console.error(`Node ${process.versions.node} found; Castwright needs 20.19 or newer`)
    process.exit(2)
  }
}

/** Installs the packages when they are missing or older than the lock file. */
export function ensurePackages() {
  checkNode()
  const stamp = at('node_modules', '.castwright-installed')
  const lock = readFileSync(at('package-lock.json'), 'utf8')
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lock) return
  console.error('installing packages ...')
  const npm = process.env.npm_execpath
  const args = ['ci', '--no-audit', '--no-fund', '--loglevel=error']
  const code = npm
    ? run(process.execPath, [npm, ...args])
    : run('npm', args, { shell: process.platform === 'win32' })
  if (code !== 0) {
    console.error('the packages could not be installed; npm said why above')
    process.exit(2)
  }
  writeFileSync(stamp, lock)
}

/** Builds what is out of date. tsc works out what that is. */
export function ensureBuild() {
  return run(process.execPath, [at('scripts', 'build.mjs')])
}

/** A Chromium for the page tests: found, installed by apt when root on Debian, or null. */
export function ensureBrowser() {
  const known = process.env.CASTWRIGHT_BROWSER
    ? [process.env.CASTWRIGHT_BROWSER]
    : [
        '/usr/bin/chromium',
        '/usr/bin/chromium-browser',
        '/usr/bin/google-chrome',
        '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
        '/Applications/Chromium.app/Contents/MacOS/Chromium'
      ]
  const found = () => known.find(path => existsSync(path) && statSync(path).isFile()) ?? null
  if (found() === null && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.error('installing chromium for the page tests ...')
    const quiet = { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } }
    if (run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], quiet) !== 0) {
      run('apt-get', ['update'], quiet)
      run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], quiet)
    }
  }
  return found()
}
