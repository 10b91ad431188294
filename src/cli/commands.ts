import { Command, InvalidArgumentError, Option } from 'commander';
import { runLineProtocol } from '../door/line-protocol.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';
import type { RunOptions } from '../server/run-server.ts';
import { longSheets, lyingPaper } from '../sheets/paper-size.ts';
import { backUp, move, restore } from './backup-commands.ts';
import { checkBuildFile } from './check-build-file.ts';
import { openBuild } from './open-build.ts';
import { pair } from './pair-command.ts';
import { reportData } from './report-data.ts';
import { reportText } from './report-text.ts';
import { exportShop, importShop } from './shop-commands.ts';
import { workBuildFile } from './work-build-file.ts';
import { type CustomerPageOptions, writeCustomerPage } from './write-customer-page.ts';
import { type StripsOptions, writeStrips } from './write-strips.ts';
import { type WallMarksCommand, writeWallMarks } from './write-wall-marks.ts';

/** The command line; `setCode` takes the exit code of a command that ran. */
export function makeProgram(setCode: (code: number) => void): Command {
  const program = new Command('fairbend')
    .description(
      'The bench instrument for custom fishing-rod builders: how this blank bends, where its guides go.',
    )
    .helpCommand('help [command]', 'show help, of one command too')
    .addHelpText('after', `\n${exitWords}`)
    .showHelpAfterError('Run "fairbend help" for what there is.');
  addEngine(program, setCode);
  addCheck(program, setCode);
  addReport(program);
  addStrips(program);
  addCustomerPage(program);
  addWallMarks(program);
  addServe(program, setCode);
  addBackups(program);
  return program;
}

const exitWords =
  'Exit codes: 0 done; 1 the build has findings (check) or they stop the work; 2 the file, an option or the input makes no sense. Results go to standard output, everything else to standard error.';
const fileWords = 'an exported build, or - for standard input';

function addEngine(program: Command, setCode: (code: number) => void): void {
  program
    .command('engine')
    .description('answer one JSON request a line on standard input, one JSON answer a line, until it ends')
    .action(async () => setCode(await runLineProtocol(process.stdin, { write: writeLine })));
}

/** Waits where the reader is slower. */
function writeLine(line: string): Promise<void> | undefined {
  if (process.stdout.write(line)) return undefined;
  return new Promise((resolve) => process.stdout.once('drain', () => resolve()));
}

interface Asked {
  json?: boolean;
  units?: string;
}
const systems: Readonly<Record<string, UnitSystem | undefined>> = { in: 'inch', mm: 'mm' };

function unitsOption(): Option {
  return new Option('--units <units>', 'inches or millimetres (otherwise as the tape)').choices(['in', 'mm']);
}

function addCheck(program: Command, setCode: (code: number) => void): void {
  program
    .command('check')
    .description('say what in a build is missing, makes no sense or looks like a slip')
    .argument('<file>', fileWords)
    .addOption(unitsOption())
    .option('--json', 'findings as JSON')
    .action((file: string, { json, units }: Asked) =>
      setCode(checkBuildFile(openBuild(file, systems[units ?? '']), json ?? false)),
    );
}

function addReport(program: Command): void {
  program
    .command('report')
    .description('stiffness, scores of the layouts and marks')
    .argument('<file>', fileWords)
    .addOption(unitsOption())
    .option('--json', 'the same as JSON, in SI units')
    .action((file: string, { json, units }: Asked) => {
      const build = openBuild(file, systems[units ?? '']);
      const worked = workBuildFile(build);
      const text = json
        ? `${JSON.stringify(reportData(worked, build), null, 2)}\n`
        : reportText(worked, build);
      process.stdout.write(text);
    });
}

function addStrips(program: Command): void {
  program
    .command('strips')
    .description('strips of paper at true size to lay along each section, and the list of marks, as PDF')
    .argument('<file>', fileWords)
    .addOption(
      new Option('--paper <paper>', 'paper to print on')
        .choices([...Object.keys(longSheets), 'roll'])
        .makeOptionMandatory(),
    )
    .option('--roll-width <length>', 'of a roll, or of paper cut to a length of your own (otherwise 210 mm)')
    .option('--roll-length <length>', 'longest print on it (otherwise as long as a section)')
    .requiredOption('--out <file>', 'PDF to write', notEmpty)
    .option('--rule-across <length>', 'what the 100 mm rule across an earlier print measured')
    .option('--rule-along <length>', 'what the 100 mm rule along it measured')
    .action(async (file: string, options: StripsOptions) => {
      process.stdout.write(`${await writeStrips(openBuild(file), options)}\n`);
    });
}

function addCustomerPage(program: Command): void {
  program
    .command('customer-page')
    .description(
      'the finished rod for its customer as one HTML file: how it bends, what it is made of, its care',
    )
    .argument('<file>', fileWords)
    .requiredOption('--out <file>', 'HTML file to write', notEmpty)
    .addOption(unitsOption())
    .option('--shop <name>', 'who built it')
    .option('--number <number>', 'the number on its label')
    .action((file: string, { units, ...options }: CustomerPageOptions & Asked) => {
      process.stdout.write(`${writeCustomerPage(openBuild(file, systems[units ?? '']), options)}\n`);
    });
}

function addWallMarks(program: Command): void {
  program
    .command('wall-marks')
    .description('reference marks to pin beside a rod before it is photographed, as PDF at true size')
    .addOption(
      new Option('--paper <paper>', 'paper to print on')
        .choices(Object.keys(lyingPaper))
        .makeOptionMandatory(),
    )
    .requiredOption('--out <file>', 'PDF to write', notEmpty)
    .option('--count <number>', 'how many, 4 to 24', '8')
    .action(async (options: WallMarksCommand) => {
      process.stdout.write(`${await writeWallMarks(options)}\n`);
    });
}

function addServe(program: Command, setCode: (code: number) => void): void {
  program
    .command('serve')
    .description('serve the bench to the browser on this computer until Ctrl-C')
    .option('--data <folder>', 'data folder (otherwise FAIRBEND_DATA, or the usual place)')
    .option('--port <number>', 'port (otherwise PORT, or the usual one)')
    .option('--host <address>', 'address to listen on (otherwise this computer only)')
    .option('--share', 'let paired devices of the network in; prints a code and a QR code')
    .option('--tls', 'with --share: by https, with a certificate of the shop’s own')
    .option('--behind <origin>', 'shared through a TLS proxy on this computer, such as https://rods.example')
    .option('--open', 'open a browser where there is a desktop')
    .action(async (options: RunOptions) => {
      const { endSoon, runServer } = await import('../server/run-server.ts');
      setCode(await runServer({ ...options, port: options.port ?? process.env.PORT }));
      endSoon();
    });
}

function addBackups(program: Command): void {
  const dataWords = 'data folder (otherwise FAIRBEND_DATA, or the usual place)';
  program
    .command('backup')
    .description('the whole record in one checked .zip; the server may go on running')
    .requiredOption('--out <file>', 'archive to write', notEmpty)
    .option('--data <folder>', dataWords)
    .action(async (options: { out: string; data?: string }) => {
      process.stdout.write(await backUp(options));
    });
  program
    .command('restore')
    .description('put a backup in the place of the record, which is kept; end the server first')
    .argument('<file>', 'a backup')
    .option('--data <folder>', dataWords)
    .action(async (file: string, options: { data?: string }) => {
      process.stdout.write(await restore(file, options));
    });
  program
    .command('export-shop')
    .description('the whole shop as readable files, history and pictures with them: a new folder, or a .zip')
    .requiredOption('--out <folder or file.zip>', 'what to write', notEmpty)
    .option('--data <folder>', dataWords)
    .action(async (options: { out: string; data?: string }) => {
      process.stdout.write(await exportShop(options));
    });
  program
    .command('import-shop')
    .description('take an exported shop into an empty record; it comes back equal')
    .argument('<folder or file.zip>', 'an exported shop')
    .option('--data <folder>', `${dataWords}, empty`)
    .action(async (source: string, options: { data?: string }) => {
      process.stdout.write(await importShop(source, options));
    });
  program
    .command('pair')
    .description('a code that lets one more device in, from the server that runs on this computer')
    .option('--data <folder>', dataWords)
    .action(async (options: { data?: string }) => {
      process.stdout.write(await pair(options));
    });
  const placeWords = 'a data folder or a postgres:// address';
  program
    .command('move')
    .description(
      'copy the whole record to an empty data folder or PostgreSQL database; end the servers first',
    )
    .requiredOption('--from <place>', placeWords, notEmpty)
    .requiredOption('--to <place>', `${placeWords}, empty`, notEmpty)
    .action(async (options: { from: string; to: string }) => {
      process.stdout.write(await move(options));
    });
}

function notEmpty(value: string): string {
  if (value.trim() === '') throw new InvalidArgumentError('Give the name of a file.');
  return value;
}
