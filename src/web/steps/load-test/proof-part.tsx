import { useMemo, useState } from 'react';
import { Button, Checkbox } from 'react-aria-components';
import { nextProofKg } from '../../../engine/flow/next-proof.ts';
import { hungBefore, judgeProof } from '../../../engine/load-test/judge-proof.ts';
import { formatDegrees, formatGrams } from '../../../engine/units/format-quantity.ts';
import { type Proof, readProofs } from '../../../record/read-proofs.ts';
import { buildSchema, type Field } from '../../../record/schema.ts';
import { agreedInWords } from '../../../words/judging.ts';
import { FieldFrame } from '../../fields/field-frame.tsx';
import { readTyped } from '../../fields/read-typed.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { useFittingBlanks } from '../../read/use-fitting-blanks.ts';
import { useSentence } from '../../read/use-sentence.ts';
import { newProof } from './new-proof.ts';
import { predictProof } from './predict-proof.ts';
import { ProofCard } from './proof-card.tsx';

const weight: Field = { ...buildSchema.proofs.fields.hung, min: 0.001, max: 20 } as Field;

/** A weight never hung before: predicted first, then hung and looked at. */
export function ProofPart({ model }: { model: SheetModel }) {
  const { document, write, newRowId } = useBuild();
  const { bench, stiffness } = useBench();
  const { reader, writer } = useShop();
  const { blanks: blanksThatFit, working } = useFittingBlanks();
  const sentence = useSentence();
  const [typed, setTyped] = useState('');
  // marks of one's own: they are taped on for the test
  const [guidesOn, setGuidesOn] = useState(model.marksAre === 'own');
  const [trouble, setTrouble] = useState<string>();
  const proofs = useMemo(() => readProofs(document), [document]);
  const { buttAngleRad } = model.choices;
  const hung = (bench?.setups ?? []).flatMap((setup) => setup.tests.map((test) => test.hungKg));
  const proposedKg = nextProofKg([...hung, ...proofs.map((proof) => proof.hungKg)], model.loads.kg);

  const predict = () => {
    const read = readTyped(typed, weight, reader);
    if (!read.ok) return setTrouble(read.trouble);
    const hungKg = read.value && typeof read.value === 'object' ? read.value.si : undefined;
    if (hungKg === undefined) return setTrouble('Which weight? Write it as 150 g or 6 oz.');
    const before = hungBefore(hungKg, hung);
    if (before !== undefined) {
      return setTrouble(
        `${formatGrams(before, 0)} was hung on the bench already and would prove nothing: take a weight that differs by a fifth or more.`,
      );
    }
    if (working) return setTrouble('How sure it is is still being worked out: press again in a moment.');
    const answer = predictProof({ model, stiffness, blanksThatFit, hungKg, buttAngleRad, guidesOn });
    if (answer.status !== 'predicted') {
      return setTrouble(`${formatGrams(hungKg, 0)} cannot be predicted. ${sentence(answer.reason)}`);
    }
    const findings = write(
      'makeProof',
      newProof(
        { hungKg, buttAngleRad, guidesOn, places: answer.places, madeAt: new Date().toISOString() },
        proofs.length,
        newRowId,
      ),
    );
    setTrouble(findings[0]?.message);
    if (findings.length === 0) setTyped('');
  };

  return (
    <Part
      folded
      holds={['proof']}
      title="Proof before trust"
      aside="predict a weight you never hung, then hang it"
    >
      <Checkbox className="flag" isSelected={guidesOn} onChange={setGuidesOn}>
        <span className="flag-box" aria-hidden="true" />
        <span>The rod carries its guides; else it is the bare blank</span>
      </Checkbox>
      <div className="proof-weight">
        <FieldFrame id="proof-weight" label="Weight on the tip, never hung before" trouble={trouble}>
          <input
            id="proof-weight"
            data-path="proofs"
            className="field-input figures"
            value={typed}
            autoComplete="off"
            placeholder={proposedKg === undefined ? undefined : `such as ${writer.load(proposedKg)}`}
            aria-invalid={trouble !== undefined || undefined}
            aria-describedby="proof-weight-line"
            onChange={(event) => {
              setTyped(event.target.value);
              setTrouble(undefined);
            }}
            onKeyDown={(event) => event.key === 'Enter' && predict()}
          />
        </FieldFrame>
      </div>
      <div>
        <Button className="button button-main" onPress={predict}>
          Predict
        </Button>
      </div>
      <p className="small quiet">
        Hold the rod at the front of the grip, butt {formatDegrees(buttAngleRad)} above level as the layout
        has it. Outwards and up are measured from the front of the grip. The angle matters: a degree at the
        grip is a thumb’s width at the tip. The prediction is kept as it is now, whatever is measured later.
      </p>
      <ProofScore proofs={proofs} />
      {proofs.toReversed().map((proof) => (
        <ProofCard key={proof.id} proof={proof} />
      ))}
    </Part>
  );
}

/** Predicted against seen over all proofs of this rod that the builder did not set aside. */
function ProofScore({ proofs }: { proofs: readonly Proof[] }) {
  const verdicts = proofs
    .filter(({ setAside }) => !setAside)
    .map(({ predicted, seen }) => judgeProof(predicted, seen))
    .filter(({ counted }) => counted > 0);
  if (verdicts.length === 0) return null;
  const sum = (of: 'counted' | 'agreed') => verdicts.reduce((total, verdict) => total + verdict[of], 0);
  return (
    <p role="status">
      <strong>{agreedInWords({ agreed: sum('agreed'), counted: sum('counted') })}</strong> on this rod, over{' '}
      {verdicts.length} {verdicts.length === 1 ? 'weight' : 'weights'}.
    </p>
  );
}
