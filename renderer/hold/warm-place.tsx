// In which appliance a hold stands, chosen among those there are; what its run proves stands beside it.
import type { Reply } from '../../core/contract';
import { SelectField } from '../parts/fields';
import { call } from '../state/ledger-calls';
import { go, say } from '../state/store';
import { useRead } from '../state/use-read';

export function WarmPlace({ hold }: { readonly hold: Reply<'hold.get'> }) {
  const answer = useRead('appliance.list', {});
  const all = answer?.ok ? answer.value.appliances : [];
  if (all.length === 0) return null;
  const choose = async (id: string): Promise<void> => {
    const done = await call('facts.correct', {
      kind: 'hold',
      id: hold.id,
      changes: { appliance: id === '' ? null : id },
    });
    if (!done.ok) say(done.sentence, 'caution');
  };
  const choices = [
    { value: '', label: 'Not noted' },
    ...all.map(({ id, name }) => ({ value: id, label: name })),
  ];
  return (
    <div className="warm-place">
      <SelectField
        label="Stands in"
        value={hold.appliance?.id ?? ''}
        choices={choices}
        onChange={(id) => void choose(id)}
      />
      <p className="soft small">
        {hold.appliance === null ? '' : (hold.appliance.says ?? 'Not proven yet: no run of it is noted.')}{' '}
        <button type="button" className="linked" onClick={() => go('hold', 'appliances')}>
          Appliances and checks
        </button>
      </p>
    </div>
  );
}
