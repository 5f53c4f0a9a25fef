/** A build file to begin with: one opening measured on site and the box that goes into it. */
export const FIRST_BUILD_FILE = `project "Sewing room drawer"
inches
read to 1/32

sheet birch-12 { called 1/2  measures 15/32  size 48 x 96 }

slides runner {
  mount side  lengths 10 to 28 by 2
  clearance 1/2  above 1/4  below 1/4  behind 1/2
}

opening threads { wide 15 1/2  high 6  deep 22 }

box for threads {
  sides birch-12  bottom birch-12 under
  corners screws  slides runner
}
`;
