import { type LedgerLine, type LinePart, lineLedger } from '@coreward/bench';
import { Fragment, type JSX, memo } from 'react';
import { launchTexts } from '../texts/launch.ts';

interface StairsProps {
  readonly parts: readonly LinePart[];
  /** W. */
  readonly laserPower: number;
  readonly chosen: string | null;
  readonly onChoose: (id: string | null) => void;
}

/** The ledger as a staircase of light: each loss a step down, under the part where it happens. */
export const Stairs = memo(function Stairs({
  parts,
  laserPower,
  chosen,
  onChoose,
}: StairsProps): JSX.Element {
  const ledger = lineLedger(parts, laserPower);
  const free = ledger.flatMap(({ free: lines }) => lines).map(({ label }) => label);
  const { ledgerColumns: heads } = launchTexts;
  return (
    <section className="stairs" aria-label={launchTexts.ledger}>
      <h2>{launchTexts.ledger}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">loss at</span>
            </th>
            <th scope="col">{heads.loss}</th>
            <th scope="col">{heads.passes}</th>
            <th scope="col">{heads.range}</th>
            <th scope="col">{heads.left}</th>
          </tr>
        </thead>
        {ledger.map(({ part, steps }) => (
          <Fragment key={part.id}>
            {steps.length > 0 && (
              <tbody className={part.id === chosen ? 'chosen' : ''}>
                <tr className="stairs-part">
                  <th scope="rowgroup" colSpan={5}>
                    <button type="button" className="quiet-button" onClick={() => onChoose(part.id)}>
                      {part.name}
                    </button>
                  </th>
                </tr>
                {steps.map((step) => (
                  <StepRow key={step.id} step={step} />
                ))}
              </tbody>
            )}
          </Fragment>
        ))}
      </table>
      {free.length > 0 && <p className="quiet">{launchTexts.costNothing(free.join(', '))}</p>}
    </section>
  );
});

function StepRow({ step }: { readonly step: LedgerLine }): JSX.Element {
  const { label, loss, passes, interval, power, left } = step;
  return (
    <tr>
      <th scope="row">{label}</th>
      <td className="loss">{loss}</td>
      <td>{passes}</td>
      <td className="range">{interval}</td>
      <td className="left">
        <span>{power}</span>
        <i className="tread" style={{ '--left': left } as Record<string, number>} />
      </td>
    </tr>
  );
}
