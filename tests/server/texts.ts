/** A drawer on a slide that is too long for it: one error, on the word `24`. */
export const tooLong = `inches
read to 1/32
sheet ply { called 1/2  measures 15/32  size 48 x 96 }
slides runner { mount side  lengths 12 to 28 by 2  clearance 1/2  behind 1/2  above 1/4  below 1/4 }
opening a { wide 15 1/2  high 6  deep 23 1/2 }
box for a { sides ply  bottom ply under  slides runner 24 }
`;

/** The same with a slide that fits. */
export const fits = tooLong.replace("runner 24", "runner 22");

/** The stock and slides by themselves, for files that use them. */
export const rack = `inches
sheet ply { called 1/2  measures 15/32  size 48 x 96 }
slides runner { mount side  lengths 12 to 28 by 2  clearance 1/2  behind 1/2  above 1/4  below 1/4 }
`;

/** A drawer whose stock and slides stand in `rack.scant`. */
export const job = `inches
read to 1/32
use "rack.scant"
opening a { wide 15 1/2  high 6  deep 23 1/2 }
box for a { sides ply  bottom ply under  slides runner }
`;
