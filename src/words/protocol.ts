import type { Protocol, ProtocolSetup, ProtocolStand } from '../engine/bench/protocol.ts';

/** A set-up as paper and rows have it: with the name the builder may change. */
export interface NamedSetup extends Omit<ProtocolSetup, 'stand'> {
  name: string;
}
export interface NamedProtocol extends Omit<Protocol, 'setups'> {
  setups: NamedSetup[];
}

const standNames: Record<ProtocolStand, string> = {
  tip: 'Tip over a padded edge',
  whole: 'Whole blank level',
  half: 'Clamp moved to half',
  quarter: 'Clamp moved three quarters up',
};

export function namedProtocol({ setups, ...protocol }: Protocol): NamedProtocol {
  return {
    ...protocol,
    setups: setups.map(({ stand, ...setup }) => ({ name: standNames[stand], ...setup })),
  };
}
