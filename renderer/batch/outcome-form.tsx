// What was seen of a jar. The take-out gate stands first: nothing about tasting is asked before it is answered.
import { useState } from 'react';
import { gateReasonSentence } from '../../core/says/safety-says';
import { onlyNormal, takeOutGate, type GateVerdict } from '../../core/safety/take-out';
import { withMatesPowerCut } from '../../core/safety/hold-mates';
import type { MatesPowerCut } from '../../core/shapes/seed-codes';
import { EARLY_SETS, OUTCOME_FIELDS, PH_HOWS, SET_WORDS, TANGS, WHEYS } from '../../core/ledger/jar-fields';
import { DISCARD_SIGNS, type DiscardSign } from '../../core/ledger/records';
import { CheckField, ChoiceField, ProseField, Section, TextField, wordChoices } from '../parts/fields';
import type { Reader } from '../parts/reading';
import type { Problems } from '../parts/taking';
import { contradiction, hasTasting, readOutcome, signsOf, type OutcomeText } from './outcome-text';

const YES_NO = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
] as const;

/** The sign the gate itself adds is worked out, never ticked; foam is asked about beside fine bubbles. */
const TICKED = DISCARD_SIGNS.filter(
  (sign) => sign !== 'not set and no pH at or below 4.6' && sign !== 'foam',
);
const signWords = (sign: DiscardSign): string =>
  ({
    pink: 'Pink',
    red: 'Red',
    orange: 'Orange',
    black: 'Black',
    fuzz: 'Fuzz',
    'foul smell': 'Foul smell',
    foam: 'Foam',
    'lifted lid': 'Lifted lid',
    'torn curd': 'Torn curd',
    'bath water got in': 'Bath water got in',
  })[sign as string] ?? sign;

interface Props {
  readonly text: OutcomeText;
  readonly onChange: (text: OutcomeText) => void;
  readonly problems: Problems;
  readonly reader: Reader;
  /** A power cut that other jars of the hold tell of. */
  readonly mates: MatesPowerCut | null;
  /** Names of what was stirred in: what thickens shows nothing by being thick. */
  readonly additions: readonly string[];
  /** The jar is set aside because of a spoiled one: whatever is answered here, nobody tastes it. */
  readonly setAside: boolean;
}

const gateOf = ({
  text,
  reader,
  mates,
  additions,
}: Pick<Props, 'text' | 'reader' | 'mates' | 'additions'>): GateVerdict => {
  const { outcome, looked } = readOutcome(text, reader);
  return takeOutGate(withMatesPowerCut(outcome, mates), looked, additions);
};

const lacksAcid = (gate: GateVerdict): boolean => gate.reasons.some(({ code }) => code === 'acid');
/** Nothing shows yet that it soured: only a meter, or a plain jar beside it, speaks for what may have thickened by itself. */
const thickenedOnly = (gate: GateVerdict): boolean => gate.reasons.some(({ code }) => code === 'thickened');

function Verdict(props: Props) {
  const gate = gateOf(props);
  const held = props.setAside && gate.verdict !== 'discard';
  const heads = {
    discard: 'Discard this jar: not food, not seed.',
    ask: 'Uncertain. Ask before anyone tastes it.',
    unanswered: 'Answer these questions before anyone tastes it.',
    open: 'Nothing here speaks against tasting. That is a good sign and not a proof.',
  } as const;
  return (
    <output
      className={
        held || gate.verdict === 'discard' || (gate.verdict === 'ask' && !onlyNormal(gate))
          ? 'notice caution gate'
          : 'notice gate'
      }
    >
      <span className="gate-head">
        {held
          ? 'Set aside: nobody tastes it, whatever is answered here.'
          : gate.verdict === 'ask' && lacksAcid(gate)
            ? 'Uncertain: not sour enough. Nobody tastes it on this.'
            : heads[gate.verdict]}
      </span>
      {gate.reasons.map((reason) => (
        <span key={reason.code}>{gateReasonSentence(reason)}</span>
      ))}
    </output>
  );
}

function Gate(props: Props) {
  const { text, onChange, problems, reader, mates } = props;
  const change = (part: Partial<OutcomeText>): void => onChange({ ...text, ...part });
  const tick = (sign: DiscardSign, on: boolean): void =>
    change({
      signs: on ? [...text.signs, sign] : text.signs.filter((one) => one !== sign),
      noneSeen: on ? false : text.noneSeen,
    });
  return (
    <Section level={3} title="At take-out, before tasting" says="Look first, then smell. Taste nothing yet.">
      <ChoiceField
        label={OUTCOME_FIELDS.setAtTakeOut.label}
        value={text.setAtTakeOut}
        choices={YES_NO}
        onChange={(setAtTakeOut) => change({ setAtTakeOut })}
      />
      <ChoiceField
        label={OUTCOME_FIELDS.sour.label}
        value={text.sour}
        choices={YES_NO}
        onChange={(sour) => change({ sour })}
      />
      <div className="fields">
        <TextField
          label="pH"
          width="short"
          value={text.ph}
          placeholder="4.3"
          read={reader.ph(text.ph)}
          problem={problems.get('ph')}
          onChange={(ph) => change({ ph })}
        />
        <ChoiceField
          label="Measured with"
          value={text.phHow}
          choices={wordChoices(PH_HOWS)}
          hint={
            text.phHow === 'strip'
              ? 'A strip can’t decide whether an unset jar is sour enough.'
              : text.phHow === 'meter'
                ? 'In a spoonful that is then thrown away.'
                : undefined
          }
          onChange={(phHow) => change({ phHow })}
        />
        {text.phHow === 'meter' && (
          <ChoiceField
            label={OUTCOME_FIELDS.phChecked.label}
            value={text.phChecked}
            choices={YES_NO}
            hint={text.phChecked === 'yes' ? undefined : 'A meter that was not checked proves nothing.'}
            onChange={(phChecked) => change({ phChecked })}
          />
        )}
      </div>
      <fieldset className="choices">
        <legend className="label">Any of these, by look or smell?</legend>
        <div className="choice-row">
          {TICKED.map((sign) => (
            <CheckField
              key={sign}
              label={signWords(sign)}
              tone="caution"
              checked={text.signs.includes(sign)}
              onChange={(on) => tick(sign, on)}
            />
          ))}
          <CheckField
            label="None of these"
            checked={text.noneSeen}
            onChange={(noneSeen) =>
              change(
                noneSeen
                  ? {
                      noneSeen,
                      signs: [],
                      spoiledSaid: false,
                      bubbles: text.bubbles === 'foam' ? '' : text.bubbles,
                    }
                  : { noneSeen },
              )
            }
          />
        </div>
      </fieldset>
      <ChoiceField
        label="Bubbles"
        value={text.bubbles}
        choices={[
          { value: 'none', label: 'None' },
          { value: 'fine', label: 'Fine bubbles' },
          { value: 'foam', label: 'Foam: discard' },
        ]}
        onChange={(bubbles) => change(bubbles === 'foam' ? { bubbles, noneSeen: false } : { bubbles })}
      />
      <div className="fields">
        <ChoiceField
          label={OUTCOME_FIELDS.powerCut.label}
          hint={mates ? `${mates.label}, from the same hold, tells of a power cut.` : undefined}
          value={text.powerCut}
          choices={YES_NO}
          onChange={(powerCut) => change({ powerCut })}
        />
        {text.powerCut === 'yes' && (
          <TextField
            label={OUTCOME_FIELDS.powerCutHours.label}
            width="short"
            value={text.powerCutHours}
            placeholder="if it is known"
            read={reader.hours(text.powerCutHours)}
            problem={problems.get('powerCutHours')}
            onChange={(powerCutHours) => change({ powerCutHours })}
          />
        )}
      </div>
      <div className="choice-row">
        <CheckField
          label="Spoiled, thrown out"
          tone="caution"
          checked={text.spoiledSaid}
          onChange={(spoiledSaid) => change(spoiledSaid ? { spoiledSaid, noneSeen: false } : { spoiledSaid })}
        />
        <CheckField
          label="A purple or brown tint, or a jelly: the fibre did this"
          checked={text.fibreDidThis}
          onChange={(fibreDidThis) => change({ fibreDidThis })}
        />
      </div>
      {text.fibreDidThis && (
        <p className="soft">
          A fibre can tint a jar purple or brown, or set it to a jelly. It never explains a sign above.
        </p>
      )}
      {(signsOf(text).length > 0 || text.spoiledSaid) && (
        <div className="fields">
          <ChoiceField
            label={OUTCOME_FIELDS.seenAt.label}
            unsaid={null}
            value={text.seenAt === '' ? 'take-out' : text.seenAt}
            choices={[
              { value: 'take-out', label: 'At take-out' },
              { value: 'after opening', label: 'After opening' },
            ]}
            onChange={(seenAt) => change({ seenAt })}
          />
          {text.seenAt === 'after opening' && (
            <TextField
              label={OUTCOME_FIELDS.openedDays.label}
              width="short"
              value={text.openedDays}
              problem={problems.get('openedDays')}
              onChange={(openedDays) => change({ openedDays })}
            />
          )}
        </div>
      )}
      <Verdict {...props} />
    </Section>
  );
}

function Early({ text, onChange, problems, reader }: Props) {
  const change = (part: Partial<OutcomeText>): void => onChange({ ...text, ...part });
  const [open, setOpen] = useState(
    [text.earlyCheckHours, text.earlySet, text.earlyPh, text.earlySour].some((value) => value !== ''),
  );
  return (
    <details className="more" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Early check, 6 to 12 hours in</summary>
      <div className="fields">
        <TextField
          label={OUTCOME_FIELDS.earlyCheckHours.label}
          width="short"
          value={text.earlyCheckHours}
          read={reader.hours(text.earlyCheckHours)}
          problem={problems.get('earlyCheckHours')}
          onChange={(earlyCheckHours) => change({ earlyCheckHours })}
        />
        <TextField
          label={OUTCOME_FIELDS.earlyPh.label}
          width="short"
          value={text.earlyPh}
          read={reader.ph(text.earlyPh)}
          problem={problems.get('earlyPh')}
          onChange={(earlyPh) => change({ earlyPh })}
        />
        <ChoiceField
          label={OUTCOME_FIELDS.earlySet.label}
          value={text.earlySet}
          choices={wordChoices(EARLY_SETS)}
          onChange={(earlySet) => change({ earlySet })}
        />
        <ChoiceField
          label={OUTCOME_FIELDS.earlySour.label}
          value={text.earlySour}
          choices={YES_NO}
          onChange={(earlySour) => change({ earlySour })}
        />
      </div>
      <p className="soft">
        Not sour at 12 hours, or above pH 5.7: spoilage organisms had time. Above pH 5.3 at 24 hours: discard.
      </p>
    </details>
  );
}

function Tasting({ text, onChange, problems, reader }: Props) {
  const contradicts = contradiction(text);
  const change = (part: Partial<OutcomeText>): void => onChange({ ...text, ...part });
  return (
    <Section level={3} title="After the chill">
      <ChoiceField
        label="Set"
        value={text.setWord}
        choices={wordChoices(SET_WORDS)}
        onChange={(setWord) => change({ setWord })}
      />
      {contradicts !== null && <output className="notice caution">{contradicts}</output>}
      <ChoiceField
        label="Whey"
        value={text.whey}
        choices={wordChoices(WHEYS)}
        onChange={(whey) => change({ whey })}
      />
      <ChoiceField
        label="Tang"
        value={text.tang}
        choices={wordChoices(TANGS)}
        onChange={(tang) => change({ tang })}
      />
      <div className="fields">
        <TextField
          label="Texture"
          value={text.texture}
          placeholder="smooth, grainy"
          onChange={(texture) => change({ texture })}
        />
        <TextField
          label={OUTCOME_FIELDS.setAfterHours.label}
          width="short"
          value={text.setAfterHours}
          read={reader.hours(text.setAfterHours)}
          problem={problems.get('setAfterHours')}
          onChange={(setAfterHours) => change({ setAfterHours })}
        />
        <TextField
          label={OUTCOME_FIELDS.setByHours.label}
          width="short"
          value={text.setByHours}
          read={reader.hours(text.setByHours)}
          problem={problems.get('setByHours')}
          onChange={(setByHours) => change({ setByHours })}
        />
      </div>
    </Section>
  );
}

/** All fields of an outcome. */
export function OutcomeFieldsForm(props: Props) {
  const { text, onChange } = props;
  const [later, setLater] = useState(false);
  const gate = gateOf(props);
  const { verdict } = gate;
  const may =
    (verdict === 'open' || verdict === 'ask') && !lacksAcid(gate) && !thickenedOnly(gate) && !props.setAside;
  const tasting = may || later || hasTasting(text);
  const change = (part: Partial<OutcomeText>): void => onChange({ ...text, ...part });
  return (
    <>
      <Gate {...props} />
      <Early {...props} />
      {tasting && verdict !== 'discard' && <Tasting {...props} />}
      {verdict === 'discard' && hasTasting(text) && <Tasting {...props} />}
      {!tasting && verdict !== 'discard' && (
        <button type="button" className="button quiet" onClick={() => setLater(true)}>
          I am writing this down later, from notes
        </button>
      )}
      <div className="fields">
        <TextField
          label="Smell"
          value={text.smell}
          placeholder="clean, milky"
          onChange={(smell) => change({ smell })}
        />
        <TextField
          label="Colour"
          value={text.colour}
          placeholder="white"
          onChange={(colour) => change({ colour })}
        />
        <ChoiceField
          label="Still on the shelf"
          value={text.shelf}
          choices={[
            { value: 'kept', label: 'Yes' },
            { value: 'gone', label: 'Gone' },
          ]}
          onChange={(shelf) => change({ shelf })}
        />
      </div>
      <ProseField label="Note on the outcome" value={text.note} onChange={(note) => change({ note })} />
      <p className="soft small">
        These are the usual cautions, not a food-safety test. Your local food-safety authority has the last
        word; anyone with weakened immunity or serious illness asks their doctor first.
      </p>
    </>
  );
}
