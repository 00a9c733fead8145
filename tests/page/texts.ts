// Results as a person would paste them. Invented people of the Saltmarsh Bay Health Centre.

export const ironDeficiency = `Name: Mirren Sallow    DOB: 14 Jun 1987    Sex: F
Test	17 Nov 2026	Unit	Reference range
Haemoglobin	108 L	g/L	115 - 155
Ferritin	9 L	ug/L	30 - 400
Transferrin saturation	9 L	%	16 - 50
CRP	<5	mg/L	<5
`;

/** Haemoglobin 62 g/L: far below any limit at which a letter may simply go out. */
export const veryLow = ironDeficiency.replace('108 L', '62 L');

/** 13.2 was printed in g/dL; with g/L it is impossible. */
export const unitSlip = ironDeficiency.replace('108 L', '13.2').replace('115 - 155', '11.5 - 15.5');

/** Ferritin 900 in a unit that laboratories mix up. */
export const doubtfulFerritin = `Sex: M  DOB: 14 Jun 1957
Test	17 Nov 2026	Unit	Reference range
Haemoglobin	148	g/L	130 - 170
Ferritin	5580	ng/dL	30 - 400
CRP	3	mg/L	<5
`;
