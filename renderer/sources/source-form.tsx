// A product with its declared strains, or a culture received from someone.
import type { Source } from '../../core/ledger/records';
import { call } from '../state/ledger-calls';
import { EditForm } from '../parts/edit-form';
import { ChoiceField, ProseField, Section, TextField } from '../parts/fields';
import { Rows } from '../parts/entry-rows';
import { useReader } from '../parts/use-reader';
import type { Reader } from '../parts/reading';
import type { Problems } from '../parts/taking';
import { noStrain, readSource, sourceText, type SourceText, type StrainText } from './source-text';

interface Part {
  readonly text: SourceText;
  readonly set: (text: SourceText) => void;
  readonly problems: Problems;
  readonly reader: Reader;
}

/** What the label of a product tells besides its strains. */
function ProductFields({ text, set, problems, reader }: Part) {
  return (
    <>
      <ChoiceField
        label="Form"
        value={text.form}
        choices={[
          { value: 'capsules', label: 'Capsules' },
          { value: 'tablets', label: 'Tablets' },
          { value: 'sachets', label: 'Sachets' },
          { value: 'powder', label: 'Powder' },
        ]}
        onChange={(form) => set({ ...text, form })}
      />
      <div className="fields">
        <TextField
          label="Count of all strains together, in one piece"
          value={text.total}
          placeholder="5 billion"
          read={reader.count(text.total)}
          problem={problems.get('total')}
          onChange={(total) => set({ ...text, total })}
        />
        <ChoiceField
          label="Counts are guaranteed"
          value={text.guaranteed}
          choices={[
            { value: 'manufacture', label: 'At manufacture' },
            { value: 'expiry', label: 'Until expiry' },
          ]}
          onChange={(guaranteed) => set({ ...text, guaranteed })}
        />
      </div>
    </>
  );
}

/** What is known of a culture received from someone. */
function CultureFields({ text, set, problems }: Part) {
  return (
    <div className="fields">
      <TextField
        label="Received from"
        value={text.receivedFrom}
        onChange={(receivedFrom) => set({ ...text, receivedFrom })}
      />
      <TextField
        label="Generations it has run, if known"
        value={text.generations}
        hint="Leave it empty where the past is unknown: what descends is then “at least”."
        problem={problems.get('generations')}
        onChange={(generations) => set({ ...text, generations })}
      />
    </div>
  );
}

/** One strain as it was declared. */
function StrainFields({
  strain: one,
  at,
  counted,
  problems,
  reader,
  onChange,
}: Pick<Part, 'problems' | 'reader'> & {
  readonly strain: StrainText;
  readonly at: number;
  /** Whether a piece of it has a count. */
  readonly counted: boolean;
  readonly onChange: (part: Partial<StrainText>) => void;
}) {
  return (
    <div className="fields">
      <TextField label="Genus" value={one.genus} onChange={(genus) => onChange({ genus })} />
      <TextField label="Species" value={one.species} onChange={(species) => onChange({ species })} />
      <TextField
        label="Strain name"
        value={one.designation}
        problem={problems.get(`strains.${at}.designation`)}
        onChange={(designation) => onChange({ designation })}
      />
      {counted && (
        <TextField
          label="Count in one piece"
          value={one.count}
          placeholder="100 million"
          read={reader.count(one.count)}
          problem={problems.get(`strains.${at}.count`)}
          onChange={(count) => onChange({ count })}
        />
      )}
    </div>
  );
}

/** The form; `source` null adds one. */
export function SourceForm({
  source,
  onDone,
}: {
  readonly source: Source | null;
  readonly onDone: () => void;
}) {
  const { reader } = useReader();
  const initial = sourceText(source);
  return (
    <EditForm
      label={source ? `Correct ${source.name}` : 'New source'}
      draftKey={`source:${source?.id ?? 'new'}`}
      place={{ says: source ? `correction of ${source.name}` : 'new source', screen: 'sources', focus: null }}
      initial={initial}
      askWhy={source !== null}
      saved={source ? `Corrected ${source.name}.` : 'Recorded the source.'}
      onDone={onDone}
      read={(text) => {
        const read = readSource(text, source?.id ?? null, reader);
        const same = source !== null && JSON.stringify(text) === JSON.stringify(initial);
        return {
          problems: read.problems,
          send: same ? null : (why, draft) => call('source.save', { source: read.source, why, draft }),
        };
      }}
    >
      {(text, set, problems) => {
        const strain = (at: number, part: Partial<StrainText>): void =>
          set({ ...text, strains: text.strains.with(at, { ...text.strains[at]!, ...part }) });
        return (
          <>
            <ChoiceField
              label="What it is"
              unsaid={null}
              value={text.kind}
              choices={[
                { value: 'product', label: 'A product with a label' },
                { value: 'culture', label: 'A culture received from someone' },
              ]}
              onChange={(kind) => kind !== '' && set({ ...text, kind })}
            />
            <TextField
              label="Name"
              value={text.name}
              problem={problems.get('name')}
              onChange={(name) => set({ ...text, name })}
            />
            {text.kind === 'product' ? (
              <ProductFields {...{ text, set, problems, reader }} />
            ) : (
              <CultureFields {...{ text, set, problems, reader }} />
            )}
            <Section title="Strains, as declared" says="Declared at the start, not tested since.">
              <Rows
                items={text.strains}
                kind="strain"
                fresh={noStrain}
                onChange={(strains) => set({ ...text, strains })}
              >
                {(one, at) => (
                  <StrainFields
                    strain={one}
                    at={at}
                    counted={text.kind === 'product'}
                    {...{ problems, reader }}
                    onChange={(part) => strain(at, part)}
                  />
                )}
              </Rows>
            </Section>
            <ProseField label="Note" value={text.note} onChange={(note) => set({ ...text, note })} />
          </>
        );
      }}
    </EditForm>
  );
}
