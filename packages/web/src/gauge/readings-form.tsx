import {
  columnsToFill,
  type Gauge,
  type Grid,
  gridOf,
  howToFor,
  type RefusalParts,
  readingUnits,
} from '@coreward/bench';
import { type DragEvent, type JSX, useId, useState } from 'react';
import { timeText } from '../frame/time-text.ts';
import { gaugeTexts } from '../texts/gauge.ts';
import { Cells } from './cells.tsx';
import { FromInstrument } from './from-instrument.tsx';
import '../field/field.css';
import { CameraPair, CameraPicture } from '../camera/camera-picture.tsx';
import { PictureChoice } from '../camera/picture-choice.tsx';
import { SettingField } from './setting-field.tsx';
import type { Beam, GaugeBench } from './use-bench.ts';

interface ReadingsFormProps {
  readonly gauge: Gauge;
  readonly bench: GaugeBench;
  readonly refused: readonly RefusalParts[];
}

/** Where readings come in: by hand, pasted, from a file, or as a picture; settings beside them. */
export function ReadingsForm({ gauge, bench, refused }: ReadingsFormProps): JSX.Element {
  const [isOver, setOver] = useState(false);
  const example = howToFor(gauge.name)?.example ?? null;
  const takesPicture = gauge.takes === 'picture';
  const takesTwo = gauge.takes === 'two pictures';
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    const [file] = event.dataTransfer.files;
    if (file !== undefined) void bench.takeFile(file);
  };
  if (bench.reopened?.state === 'waiting') {
    // what was typed before they are here would be lost under them
    return (
      <section className="readings" aria-label={gaugeTexts.readings}>
        <h2>{gaugeTexts.readings}</h2>
        <Reopening bench={bench} />
      </section>
    );
  }
  return (
    <section
      className={isOver ? 'readings drop-here' : 'readings'}
      aria-label={gaugeTexts.readings}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <h2>{gaugeTexts.readings}</h2>
      <Reopening bench={bench} />
      <p className="facts no-print">
        {!takesTwo && <FileChoice takesPicture={takesPicture} onFile={(file) => void bench.takeFile(file)} />}
        {example !== null && (
          <button type="button" className="quiet-button" onClick={() => bench.take(example)}>
            {gaugeTexts.example}
          </button>
        )}
        <button type="button" className="quiet-button" onClick={bench.clear}>
          {gaugeTexts.clear}
        </button>
      </p>
      {isOver && <p>{gaugeTexts.drop}</p>}
      {bench.refused !== null && (
        <p className="refusal" role="alert">
          {bench.refused}
        </p>
      )}
      {takesPicture && <PictureHere bench={bench} />}
      {takesTwo && <TwoPictures bench={bench} />}
      {gauge.settings.length > 0 && (
        <fieldset className="gauge-settings">
          <legend>{gaugeTexts.settings}</legend>
          {gauge.settings.map((spec) => (
            <SettingField
              key={spec.name}
              spec={spec}
              inTable={gauge.takes === 'table'}
              written={bench.sheet.settings[spec.name] ?? ''}
              isRefused={refused.some(
                ({ where, what }) => where.endsWith(` ${spec.name}`) || what.startsWith(`\`${spec.name}\``),
              )}
              onWrite={(text) => bench.setSetting(spec.name, text)}
            />
          ))}
        </fieldset>
      )}
      {gauge.columns.length > 0 && <Table gauge={gauge} bench={bench} />}
    </section>
  );
}

function Reopening({ bench: { reopened } }: { readonly bench: GaugeBench }): JSX.Element | null {
  if (reopened === null) return null;
  switch (reopened.state) {
    case 'waiting':
      return <p className="quiet">{gaugeTexts.reopening}</p>;
    case 'failed':
      return <p role="alert">{gaugeTexts.notReopened}</p>;
    case 'here':
      return <p className="quiet">{gaugeTexts.reopened(timeText(reopened.time))}</p>;
  }
}

function FileChoice({
  takesPicture,
  onFile,
}: {
  readonly takesPicture: boolean;
  readonly onFile: (file: File) => void;
}): JSX.Element {
  if (takesPicture) {
    return <PictureChoice words={gaugeTexts.picture} label={gaugeTexts.pictureLabel} onFile={onFile} />;
  }
  return (
    <label className="file-choice">
      <span>{gaugeTexts.file}</span>
      <input
        type="file"
        aria-label={gaugeTexts.fileLabel}
        accept=".csv,.tsv,.txt,.json,text/plain"
        onChange={({ target }) => {
          const [file] = target.files ?? [];
          if (file !== undefined) onFile(file);
          // the same file may be chosen again, when it has changed
          target.value = '';
        }}
      />
    </label>
  );
}

function PictureHere({ bench }: { readonly bench: GaugeBench }): JSX.Element {
  const { picture, takePicture } = bench;
  return (
    <>
      <p className="quiet">{gaugeTexts.pictureHint}</p>
      {picture !== null && <p>{gaugeTexts.pictureHere(picture.name)}</p>}
      <Missing bench={bench} />
      <details className="more">
        <summary>{gaugeTexts.byCamera}</summary>
        <CameraPicture onPicture={(file) => takePicture(file, 'forward', 'camera')} />
      </details>
    </>
  );
}

function Missing({ bench: { missing } }: { readonly bench: GaugeBench }): JSX.Element {
  return (
    <>
      {missing.map(({ name }) => (
        <p key={name}>{gaugeTexts.pictureGone(name)}</p>
      ))}
    </>
  );
}

const beams: readonly Beam[] = ['forward', 'reverse'];

/** A picture of each beam, by file or by one camera that stays where it is. */
function TwoPictures({ bench }: { readonly bench: GaugeBench }): JSX.Element {
  const { picture, reverse, takePicture } = bench;
  return (
    <>
      <p className="quiet">{gaugeTexts.pictureHint}</p>
      {beams.map((beam) => {
        const here = beam === 'forward' ? picture : reverse;
        return (
          <p key={beam} className="facts">
            <PictureChoice
              words={gaugeTexts.beams[beam]}
              label={gaugeTexts.beamLabel(beam)}
              onFile={(file) => takePicture(file, beam, 'file')}
            />
            {here !== null && <span>{gaugeTexts.pictureHere(here.name)}</span>}
          </p>
        );
      })}
      <Missing bench={bench} />
      <details className="more">
        <summary>{gaugeTexts.byCamera}</summary>
        <CameraPair onPicture={(file, beam) => takePicture(file, beam, 'camera')} />
      </details>
    </>
  );
}

function Table({ gauge, bench }: { readonly gauge: Gauge; readonly bench: GaugeBench }): JSX.Element {
  const { text } = bench.sheet;
  const [wantsText, setWantsText] = useState(false);
  const grid = wantsText ? null : gridOf(text);
  const hint = useId();
  return (
    <div className="gauge-table">
      <p className="choices no-print">
        <button type="button" aria-pressed={!wantsText} onClick={() => setWantsText(false)}>
          {gaugeTexts.inCells}
        </button>
        <button type="button" aria-pressed={wantsText} onClick={() => setWantsText(true)}>
          {gaugeTexts.asText}
        </button>
      </p>
      <p className="quiet" id={hint}>
        {grid === null ? gaugeTexts.textHint : gaugeTexts.cellsHint}
        {grid === null && !wantsText && ` ${gaugeTexts.longText}`}
      </p>
      {grid === null ? (
        <textarea
          aria-label={gaugeTexts.textLabel}
          aria-describedby={hint}
          rows={12}
          spellCheck={false}
          autoComplete="off"
          value={text}
          onChange={({ target }) => bench.setText(target.value)}
          onPaste={(event) => {
            const pasted = event.clipboardData.getData('text/plain');
            const { selectionStart, selectionEnd, value } = event.currentTarget;
            // a whole table in place of what was there: its settings go into their fields
            if (selectionEnd - selectionStart < value.length) return;
            event.preventDefault();
            bench.take(pasted);
          }}
        />
      ) : (
        <>
          <Cells gauge={gauge} grid={grid} onText={bench.setText} onTable={bench.take} />
          <Live gauge={gauge} grid={grid} onText={bench.setText} />
        </>
      )}
    </div>
  );
}

/** The way from an instrument into the cells; nothing is listened to before it is unfolded. */
function Live(props: {
  readonly gauge: Gauge;
  readonly grid: Grid;
  readonly onText: (text: string) => void;
}): JSX.Element | null {
  const [isOpen, setOpen] = useState(false);
  if (!readingUnits.some((unit) => columnsToFill(props.gauge, props.grid, unit).length > 0)) return null;
  return (
    <details className="more no-print" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{gaugeTexts.live.title}</summary>
      {isOpen && <FromInstrument {...props} />}
    </details>
  );
}
