/** Prints the one plain closing line that CI reads; Vitest's own summary stays above it. */
export default class SummaryReporter {
  onTestRunEnd(modules) {
    let passed = 0
    let failed = 0
    let skipped = 0
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const { state } = test.result()
        if (state === 'passed') passed++
        else if (state === 'failed') failed++
        else skipped++
      }
      if (module.errors().length > 0) failed++
    }
    console.log(`\n${passed} passed, ${failed} failed, ${skipped} skipped`)
  }
}
