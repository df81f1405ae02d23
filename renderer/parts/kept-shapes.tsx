// What may seed a batch beside a jar itself, as shapes in a 62 × 62 box: cubes, a lidded pot, a packet. Decoration.

export const CubesShape = () => (
  <>
    {[0, 1, 2].flatMap((row) =>
      [0, 1, 2].map((column) => (
        <g key={`${row} ${column}`} transform={`translate(${3 + column * 19} ${3 + row * 19})`}>
          <rect className="cube" width="17" height="17" rx="4" />
          <path className="cube-light" d="M4 5H10" />
        </g>
      )),
    )}
  </>
);

export const PotShape = () => (
  <>
    <rect className="pot-lid" x="6" y="14" width="50" height="9" rx="4" />
    <circle className="pot-lid" cx="31" cy="11" r="5" />
    <path className="cube" d="M10 24H52V46Q52 54 44 54H18Q10 54 10 46Z" />
  </>
);

export const PacketShape = () => (
  <>
    <path className="seed-packet" d="M7 12L12 8L17 12L22 8L27 12L32 8L37 12L42 8L47 12L52 8L55 12V56H7Z" />
    <rect className="seed-cell" x="15" y="24" width="13" height="11" rx="3" />
    <rect className="seed-cell" x="33" y="24" width="13" height="11" rx="3" />
  </>
);
