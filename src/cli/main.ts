#!/usr/bin/env node
import { keepCompiledCode } from './compile-cache.js';

// What is imported before it would be compiled anew each time.
keepCompiledCode();
const [{ terminalOutput }, { runCli }] = await Promise.all([import('./output.js'), import('./program.js')]);

// A reader such as `head` may stop reading: the remaining output is dropped, and the command ends with its own exit
// code.
for (const stream of [process.stdout, process.stderr])
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });

process.exitCode = await runCli(process.argv.slice(2), terminalOutput());
