// Runs the suites one after another, shows what failed, and ends with one line: N passed, N failed.
//   node .ci/suites.mjs all     everything, as CI does
//   node .ci/suites.mjs quick   what needs no browser and no running program
import { spawn } from 'node:child_process'

const lint = ['go', 'tool', '-modfile=.ci/lint.mod', 'golangci-lint', 'run']

// Each suite: what it is called, what is run, where, and how its output is counted. A suite without a count is one check.
const suites = {
  vet: { run: ['go', 'vet', './...'] },
  lint: { run: lint },
  go: { run: ['go', 'test', '-json', './...'], count: goCounts, quiet: true },
  layers: { run: ['go', 'test', '-json', '.'], count: goCounts, quiet: true },
  generated: { run: ['npm', 'run', '--silent', 'types', '--', '--check'], dir: 'web' },
  types: { run: ['npm', 'run', '--silent', 'check'], dir: 'web' },
  web: { run: ['npm', 'test', '--silent', '--', '--reporter=default', '--reporter=json'], dir: 'web', count: vitestCounts, quiet: true },
  browser: { run: ['npm', 'run', '--silent', 'e2e', '--', '--reporter=default', '--reporter=json'], dir: 'web', count: vitestCounts, quiet: true },
}

const chosen = {
  all: ['vet', 'generated', 'types', 'web', 'go', 'browser', 'lint'],
  quick: ['vet', 'layers', 'generated', 'types', 'web', 'lint'],
}[process.argv[2]]
if (!chosen) {
  console.error('say which suites: all or quick')
  process.exit(2)
}

let passed = 0
let failed = 0
for (const name of chosen) {
  const suite = suites[name]
  const began = Date.now()
  const { output, code } = await run(suite)
  const tally = suite.count ? suite.count(output) : { passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, told: '' }
  // A runner that stopped without counting a failure has failed all the same; so has one that ran nothing.
  if (tally.failed === 0 && (code !== 0 || tally.passed === 0)) tally.failed = 1
  if (tally.failed > 0 && suite.quiet) console.log(tally.told || output)
  const seconds = ((Date.now() - began) / 1000).toFixed(1)
  console.log(`${name.padEnd(9)} ${String(tally.passed).padStart(6)} good ${String(tally.failed).padStart(4)} bad  ${seconds.padStart(6)} s`)
  passed += tally.passed
  failed += tally.failed
}
console.log(`${passed} passed, ${failed} failed`)
process.exit(failed === 0 ? 0 : 1)

function run({ run: [command, ...args], dir, quiet }) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: dir, stdio: ['ignore', 'pipe', 'pipe'] })
    let output = ''
    const take = (chunk) => {
      output += chunk
      if (!quiet) process.stdout.write(chunk)
    }
    child.stdout.setEncoding('utf8').on('data', take)
    child.stderr.setEncoding('utf8').on('data', take)
    child.on('error', (err) => resolve({ output: output + err.message, code: 1 }))
    child.on('close', (code) => resolve({ output, code }))
  })
}

// goCounts reads `go test -json`: one object a line, build errors as plain text between them.
function goCounts(output) {
  const said = new Map()
  const result = { passed: 0, failed: 0, told: '' }
  for (const line of output.split('\n')) {
    const event = asJSON(line)
    if (!event) {
      if (line.trim()) result.told += line + '\n'
      continue
    }
    const key = `${event.Package ?? event.ImportPath} ${event.Test ?? ''}`
    if (event.Output) said.set(key, (said.get(key) ?? '') + event.Output)
    if (event.Action === 'build-fail') result.told += said.get(key) ?? ''
    if (event.Action === 'pass' && event.Test) result.passed++
    if (event.Action === 'fail') {
      result.told += said.get(key) ?? ''
      if (event.Test || event.FailedBuild) result.failed++
    }
  }
  return result
}

// vitestCounts finds the JSON report among the lines of the other reporter.
function vitestCounts(output) {
  for (const line of output.split('\n')) {
    const report = line.startsWith('{') ? asJSON(line) : undefined
    if (report?.numTotalTests === undefined) continue
    const broken = report.testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0).length
    const told = output.split('\n').filter((other) => other !== line).join('\n')
    return { passed: report.numPassedTests, failed: report.numFailedTests + broken, told }
  }
  return { passed: 0, failed: 1, told: output }
}

function asJSON(line) {
  try {
    return JSON.parse(line)
  } catch {
    return undefined
  }
}
