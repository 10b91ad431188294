import { useState } from 'react';
import { Button, FileTrigger, ProgressBar } from 'react-aria-components';
import { typicalGuide } from '../../../engine/kinds/guides.ts';
import { readQuantity } from '../../../engine/units/read-quantity.ts';
import type { ScannedGuide } from '../../../image/index.ts';
import { bagReferenceSheet } from '../../../sheets/bag-sheet.ts';
import { usePrinterChoice } from '../../parts/printer-choice.tsx';
import { Findings } from '../../parts/sheet/findings.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { useShop } from '../../read/shop.tsx';
import { KeptScans } from './kept-scans.tsx';
import type { ScanRead } from './scan-messages.ts';
import { ScanPicture } from './scan-picture.tsx';
import { resolutionWord } from './scan-resolution.ts';
import { ScanTable } from './scan-table.tsx';
import { useTakeScan } from './take-scan.ts';
import { type ScanFile, useScan } from './use-scan.ts';

interface ScanPartProps {
  sizes: readonly string[];
  /** Guides already in the bag. */
  inBag: number;
}

/** Feet out of line measured on a flatbed scan, instead of by eye. */
export function ScanPart({ sizes, inBag }: ScanPartProps) {
  const scan = useScan();
  const { paper } = useShop();
  const { factors } = usePrinterChoice(paper);
  return (
    <Part
      folded
      holds={['scans/']}
      title="Scan the bag"
      aside="two-footed guides lying apart, feet down, lid open or paper over them, 600 dpi"
      tools={
        <>
          <FileTrigger
            acceptedFileTypes={['image/png', 'image/jpeg']}
            onSelect={(files) => files?.[0] && void scan.open(files[0], false)}
          >
            <Button className="button">Choose a scan</Button>
          </FileTrigger>
          <FileTrigger
            acceptedFileTypes={['image/png', 'image/jpeg']}
            onSelect={(files) => files?.[0] && void scan.open(files[0], true)}
          >
            <Button className="button">Picture of the reference sheet</Button>
          </FileTrigger>
          <PrintButton
            className="plain"
            sheet="bag sheet"
            draw={(on) => [bagReferenceSheet({ ...on, factors })]}
          >
            Reference sheet as PDF
          </PrintButton>
        </>
      }
    >
      {!scan.file && (
        <p className="quiet">
          Lay one guide whose length you have measured among them, or a printed scale: it tells whether the
          resolution is right. Without a scan, tap by eye under “The bag”.
        </p>
      )}
      {scan.share !== undefined && (
        <ProgressBar value={100 * scan.share} aria-label="Reading the scan" className="scan-progress">
          {({ percentage = 0 }) => (
            <>
              <span>Reading {scan.file?.name}: </span>
              {Math.round(percentage)} %
            </>
          )}
        </ProgressBar>
      )}
      <div role="status">
        <Findings findings={scan.refused} of={scan.file?.name} />
      </div>
      {scan.file && scan.read && (
        <ScanResult
          key={scan.file.name}
          file={scan.file}
          read={scan.read}
          sizes={sizes}
          inBag={inBag}
          readAgain={scan.readAgain}
          done={scan.forget}
        />
      )}
      <KeptScans />
    </Part>
  );
}

interface ResultProps extends ScanPartProps {
  file: ScanFile;
  read: ScanRead;
  readAgain(dpi: number): void;
  done(): void;
}

function ScanResult({ file, read, sizes, inBag, readAgain, done }: ResultProps) {
  const { guides, findings } = read.scanned;
  const [chosen, setChosen] = useState<Record<number, string>>({});
  const known = useKnownLength(guides);
  const word = resolutionWord(read.dpi, read.statedDpi, known.length, file.onSheet);
  const sizeOf = (index: number) => chosen[index] ?? likelySize(guides[index], sizes);
  const { take, taking } = useTakeScan(file, read.dpi, done);
  const takeAll = () =>
    take(
      guides.flatMap((guide, index) => {
        const size = sizeOf(index);
        return size === leftOut ? [] : [{ guide, size, onScan: index + 1, order: inBag + index }];
      }),
    );
  return (
    <>
      <ScanPicture address={file.address} read={read} />
      <Findings findings={findings} />
      {guides.length > 0 && (
        <>
          <div className="fields-row">
            <label className="field">
              <span className="field-label">Number of a guide you measured</span>
              <input
                className="field-input figures"
                inputMode="numeric"
                value={known.number}
                onChange={({ target }) => known.setNumber(target.value)}
              />
            </label>
            <label className="field">
              <span className="field-label">Its length over both feet</span>
              <input
                className="field-input figures"
                value={known.text}
                placeholder={`such as ${known.example}`}
                onChange={({ target }) => known.setText(target.value)}
              />
              {known.trouble && <span className="field-line field-trouble">▲ {known.trouble}</span>}
            </label>
          </div>
          <div role="status">
            {word.ok && (
              <p className="quiet">
                Read at {read.dpi} dpi, as {confirmWords[word.because]}.
              </p>
            )}
            {!word.ok && word.because === 'unknown' && (
              <p className="attention">
                ▲ Read at {read.dpi} dpi, which nothing confirms: the file names{' '}
                {read.statedDpi ? `${Math.round(read.statedDpi)} dpi` : 'no resolution'}. Give one guide’s
                measured length above.
              </p>
            )}
            {!word.ok && word.because === 'wrong' && (
              <p className="attention">
                ▲ By your guide this scan has {word.dpi} dpi, not {read.dpi}.{' '}
                <Button className="inline" onPress={() => readAgain(word.dpi)}>
                  Read it again at {word.dpi} dpi
                </Button>
              </p>
            )}
          </div>
          <ScanTable
            guides={guides}
            sizes={sizes}
            sizeOf={sizeOf}
            choose={(index, size) => setChosen((last) => ({ ...last, [index]: size }))}
          />
          <div>
            <Button className="button button-main" isDisabled={!word.ok || taking} onPress={takeAll}>
              Put them into the bag
            </Button>
          </div>
        </>
      )}
    </>
  );
}

const confirmWords = {
  file: 'the file says',
  known: 'your guide confirms',
  sheet: 'the sheet’s four marks say; measure the print’s rules, or one guide, to be sure of the print',
} as const;

export const leftOut = '';

/** The size whose typical length is nearest; the builder corrects it. */
function likelySize({ lengthM }: ScannedGuide, sizes: readonly string[]): string {
  const away = (size: string) => Math.abs((typicalGuide('snake', size)?.lengthM ?? 1) - lengthM);
  return sizes.toSorted((a, b) => away(a) - away(b))[0] ?? leftOut;
}

/** One guide's number and length as the builder types them. */
function useKnownLength(guides: readonly ScannedGuide[]) {
  const { system, writer } = useShop();
  const example = writer.calliper(0.0235);
  const [number, setNumber] = useState('1');
  const [text, setText] = useState('');
  const read = text.trim() === '' ? undefined : readQuantity(text, { dimension: 'length', system });
  const guide = guides[Number(number) - 1];
  const usable = read?.ok && read.si > 0.003 && read.si < 0.1;
  const trouble =
    text.trim() === ''
      ? undefined
      : !guide
        ? `There is no guide ${number} on this scan: give one of 1 to ${guides.length}.`
        : usable
          ? undefined
          : `"${text}" is no length of a guide: write it like ${example}.`;
  const length = guide && usable && read.ok ? { trueM: read.si, readM: guide.lengthM } : undefined;
  return { number, setNumber, text, setText, trouble, length, example };
}
