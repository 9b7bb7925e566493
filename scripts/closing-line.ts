import type { Reporter, SerializedError, TestModule } from 'vitest/node';

/** Prints "N passed, N failed" as the last line; hooks and modules that fail count as failed. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: ReadonlyArray<TestModule>, unhandled: ReadonlyArray<SerializedError>): void {
    let passed = 0;
    let failed = unhandled.length;
    for (const module of modules) {
      failed += module.errors().length;
      for (const suite of module.children.allSuites()) failed += suite.errors().length;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed++;
        else if (state === 'failed') failed++;
      }
    }
    process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
  }
}
