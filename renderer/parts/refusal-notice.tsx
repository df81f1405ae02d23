// Why a form was not recorded, in one sentence, above what is pressed next.

export function RefusalNotice({ words }: { readonly words: string | null }) {
  return (
    words !== null &&
    words !== '' && (
      <p className="notice caution" role="alert">
        {words}
      </p>
    )
  );
}
