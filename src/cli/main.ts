#!/usr/bin/env node
import { runCommand } from './run-command.ts';
import { watchOutput } from './output.ts';

watchOutput();
const status = await runCommand(process.argv.slice(2));
process.exitCode ??= status;
