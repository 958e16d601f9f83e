#!/usr/bin/env node
import { terminalOutput } from './output.js';
import { runCli } from './program.js';

process.exitCode = await runCli(process.argv.slice(2), terminalOutput());
