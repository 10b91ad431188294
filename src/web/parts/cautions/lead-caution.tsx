import { Caution } from './caution.tsx';

/** Where weights are handled. */
export function LeadCaution() {
  return (
    <Caution
      about="lead"
      brief="Wash your hands after handling lead."
      source="MiLeadSafe, the State of Michigan’s page on jobs and hobbies with lead; seen as an excerpt"
    >
      Lead weights: no hand to the mouth, wash before eating, keep their dust from children. Steel, coins or
      water in a bag hang as well.
    </Caution>
  );
}
