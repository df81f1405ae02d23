// One bought box, bottle or carton.
import type { Package, Source } from '../../core/ledger/records';
import { call } from '../state/ledger-calls';
import { EditForm } from '../parts/edit-form';
import { ProseField, SelectField, TextField } from '../parts/fields';
import { useReader } from '../parts/use-reader';
import type { Reader } from '../parts/reading';
import type { Problems } from '../parts/taking';
import { packageText, readPackage, type PackageText } from './source-text';

/** When it was bought and opened, and until when it is best. */
function PackageDays({
  text,
  set,
  problems,
  reader,
}: {
  readonly text: PackageText;
  readonly set: (text: PackageText) => void;
  readonly problems: Problems;
  readonly reader: Reader;
}) {
  return (
    <>
      <TextField
        label="Bought on"
        value={text.boughtOn}
        read={reader.day(text.boughtOn)}
        problem={problems.get('boughtOn')}
        onChange={(boughtOn) => set({ ...text, boughtOn })}
      />
      <TextField
        label="Opened on"
        value={text.openedOn}
        read={reader.day(text.openedOn)}
        problem={problems.get('openedOn')}
        onChange={(openedOn) => set({ ...text, openedOn })}
      />
      <TextField
        label="Best before"
        value={text.bestBefore}
        read={reader.day(text.bestBefore, true)}
        problem={problems.get('bestBefore')}
        onChange={(bestBefore) => set({ ...text, bestBefore })}
      />
    </>
  );
}

/** The form; `found` null adds one, of the source, milk or addition that `of` names. */
export function PackageForm({
  found,
  of,
  name,
  sources,
  onDone,
}: {
  readonly found: Package | null;
  readonly of: string;
  readonly name: string;
  readonly sources: readonly Source[];
  readonly onDone: () => void;
}) {
  const { reader, writer } = useReader();
  const initial = packageText(of, name, found, writer);
  return (
    <EditForm
      label={found ? `Correct the package of ${found.name}` : 'New package'}
      draftKey={`package:${found?.id ?? 'new'}`}
      place={{ says: found ? `package of ${found.name}` : 'new package', screen: 'sources', focus: null }}
      initial={initial}
      askWhy={found !== null}
      saved={found ? 'Corrected the package.' : 'Recorded the package.'}
      onDone={onDone}
      read={(text) => {
        const read = readPackage(text, found?.id ?? null, reader);
        const same = found !== null && JSON.stringify(text) === JSON.stringify(initial);
        return {
          problems: read.problems,
          send: same ? null : (why, draft) => call('package.save', { package: read.package, why, draft }),
        };
      }}
    >
      {(text, set, problems) => (
        <>
          <div className="fields">
            <SelectField
              label="A package of"
              value={text.of}
              choices={[
                { value: 'milk', label: 'Milk' },
                { value: 'addition', label: 'Something stirred in' },
                ...sources.map((source) => ({ value: source.id, label: source.name })),
              ]}
              onChange={(next) =>
                set({
                  ...text,
                  of: next,
                  name: sources.find((source) => source.id === next)?.name ?? text.name,
                })
              }
            />
            <TextField
              label="What is in it"
              value={text.name}
              placeholder="potato starch"
              problem={problems.get('name')}
              onChange={(typed) => set({ ...text, name: typed })}
            />
            <TextField
              label="Size"
              value={text.size}
              placeholder="500 g, 1 l, 60 capsules"
              read={reader.amount(text.size)}
              problem={problems.get('size')}
              onChange={(size) => set({ ...text, size })}
            />
            <TextField
              label="Price"
              value={text.price}
              placeholder="12.50"
              read={reader.price(text.price)}
              problem={problems.get('price')}
              onChange={(price) => set({ ...text, price })}
            />
            <PackageDays {...{ text, set, problems, reader }} />
          </div>
          <ProseField label="Note" value={text.note} onChange={(note) => set({ ...text, note })} />
        </>
      )}
    </EditForm>
  );
}
