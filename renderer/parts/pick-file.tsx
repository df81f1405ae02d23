// A button that asks for a spreadsheet or a text of figures; the same file can be chosen twice in a row.

interface Props {
  readonly says: string;
  readonly primary?: boolean;
  readonly onFile: (file: File) => void;
}

export function PickFile({ says, primary = true, onFile }: Props) {
  return (
    <label className={primary ? 'button primary' : 'button'}>
      {says}
      <input
        className="visually-hidden"
        type="file"
        accept=".csv,.tsv,.tab,.txt,.xlsx,.ods,text/csv,text/plain"
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file) onFile(file);
        }}
      />
    </label>
  );
}
