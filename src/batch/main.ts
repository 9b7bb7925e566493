/** Starts the batch command on the real disk. npm changes the working folder; INIT_CWD is the caller's. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { runCommand } from './batch.ts';

const folder = process.env.INIT_CWD ?? process.cwd();
const { code, output, error } = await runCommand(process.argv.slice(2), {
  read: (path) => readFileSync(resolve(folder, path), 'utf8'),
  write: (path, text) => writeFileSync(resolve(folder, path), text),
  writeBytes: (path, bytes) => {
    const whole = resolve(folder, path);
    mkdirSync(dirname(whole), { recursive: true });
    writeFileSync(whole, bytes);
  },
});

process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
  if (fault.code !== 'EPIPE') throw fault; // a reader that has seen enough is no fault
});
process.stdout.write(output);
if (error) process.stderr.write(`${error}\n`);
process.exitCode = code;
