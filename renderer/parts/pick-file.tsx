// A button that asks for a file; the same file can be chosen twice in a row.

/** A spreadsheet, or a text of figures. */
const TABLES = '.csv,.tsv,.tab,.txt,.xlsx,.ods,text/csv,text/plain';

interface Props {
  readonly says: string;
  readonly accept?: string;
  readonly primary?: boolean;
  readonly disabled?: boolean;
  readonly onFile: (file: File) => void;
}

export function PickFile({ says, accept = TABLES, primary = true, disabled = false, onFile }: Props) {
  return (
    <label className={primary ? 'button primary' : 'button'}>
      {says}
      <input
        className="visually-hidden"
        type="file"
        accept={accept}
        disabled={disabled}
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file) onFile(file);
        }}
      />
    </label>
  );
}
