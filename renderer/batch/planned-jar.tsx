import { BODY } from '../../core/pictures/jar-outline';

/** A jar that is not made yet: a dashed outline, with something at its foot where something is stirred in. */
export function PlannedJar({ plain }: { readonly plain: boolean }) {
  return (
    <svg className="planned-jar" viewBox="-2 -7 66 74" aria-hidden="true">
      {!plain && <path className="planned-grain" d="M6 48H56V51Q56 60 46 60H16Q6 60 6 51Z" />}
      <path d={BODY} />
    </svg>
  );
}
