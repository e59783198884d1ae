import type { Command } from 'commander';
import type { Context } from '../context.ts';
import { addAirCommand } from './air.ts';
import { addAmendCommand } from './amend.ts';
import { addCombinationCommands } from './combination.ts';
import { addCompareCommand } from './compare.ts';
import { addDemoCommand } from './demo.ts';
import { addExportCommand } from './export.ts';
import { addImportCommand } from './import.ts';
import { addListCommand } from './list.ts';
import { addOriginalCommand } from './original.ts';
import { addPackageCommands } from './package.ts';
import { addPublishCommand } from './publish.ts';
import { addRestoreCommand } from './restore.ts';
import { addServeCommand } from './serve.ts';
import { addShowCommand } from './show.ts';
import { addSummaryCommand } from './summary.ts';
import { addTrialCommands } from './trial.ts';

/** Every command, in the order of the help. */
export function addCommands(program: Command, context: Context): void {
  addServeCommand(program, context);
  addDemoCommand(program, context);
  addImportCommand(program, context);
  addSummaryCommand(program, context);
  addListCommand(program, context);
  addShowCommand(program, context);
  addAmendCommand(program, context);
  addCombinationCommands(program, context);
  addPackageCommands(program, context);
  addTrialCommands(program, context);
  addCompareCommand(program, context);
  addAirCommand(program, context);
  addPublishCommand(program, context);
  addExportCommand(program, context);
  addRestoreCommand(program, context);
  addOriginalCommand(program, context);
}
