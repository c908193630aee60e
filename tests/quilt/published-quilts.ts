/** A fabric of a published quilt: the amount printed, in inches of length, and its cutting list. */
interface PublishedFabric {
  name: string;
  /** Null when the amount printed is in fat quarters or fat eighths. */
  inches: number | null;
  /** Sizes in inches, shorter side first, with how many. */
  pieces: readonly (readonly [number, number, number])[];
  /** Why our list cuts other sizes or counts; the published list is then not compared. */
  cutsDiffer?: string;
  /** What the published amount leaves out, when ours is more. */
  amountDiffers?: string;
}

export interface PublishedQuilt {
  file: string;
  /** Finished patchwork in inches, seam allowance round the outside not counted. */
  finished: readonly [number, number];
  fabrics: readonly PublishedFabric[];
}

const SHORT_SET =
  "published strip sets are all of one length; ours end with a shorter one, just long enough for the segments left";

/** Figures as printed in the cutting lists and materials of the patterns named. */
export const PUBLISHED_QUILTS: readonly PublishedQuilt[] = [
  // Flight of Geese, American Patchwork & Quilting (allpeoplequilt.com); the amount covers the binding too.
  {
    file: "geese-and-bars",
    finished: [60, 60],
    fabrics: [
      {
        name: "prints",
        inches: 252,
        pieces: [
          [3.5, 6.5, 200],
          [3.5, 3.5, 200],
        ],
      },
      { name: "binding lengths", inches: null, pieces: [[2.5, 20, 13]] },
    ],
  },
  // Striking Stars, American Patchwork & Quilting (allpeoplequilt.com), 2014
  {
    file: "stars-and-geese-sashes",
    finished: [46, 46],
    fabrics: [
      { name: "pink dot", inches: 9, pieces: [[2.875, 2.875, 8]] },
      { name: "solid pink", inches: 9, pieces: [[2.875, 2.875, 24]] },
      { name: "solid blue", inches: 18, pieces: [[2.875, 2.875, 48]] },
      {
        name: "blue print",
        inches: 18,
        pieces: [
          [5.25, 5.25, 6],
          [2.875, 2.875, 24],
          [2.5, 2.5, 16],
        ],
      },
      {
        name: "green stripe",
        inches: 18,
        pieces: [
          [5.25, 5.25, 4],
          [1.5, 34.5, 2],
          [1.5, 32.5, 2],
        ],
      },
      { name: "small floral", inches: 9, pieces: [[4.5, 4.5, 4]] },
      { name: "medium floral", inches: 18, pieces: [[8.5, 8.5, 5]] },
      {
        name: "large floral",
        inches: 40.5,
        pieces: [
          [6.5, 42, 3],
          [6.5, 34.5, 2],
        ],
      },
      { name: "binding print", inches: 18, pieces: [[2.5, 42, 5]] },
    ],
  },
  // Meadow Goose Quilt Tutorial, Fox Favorites, 2016
  {
    file: "meadow-geese",
    finished: [63, 90],
    fabrics: [
      { name: "colours", inches: null, pieces: [[5, 9.5, 113]] },
      {
        name: "background",
        inches: 180,
        pieces: [
          [9.5, 20.75, 1],
          [9.5, 25.25, 1],
          [9.5, 14, 1],
          [2.75, 9.5, 2],
          [7.25, 9.5, 1],
          [9.5, 43.25, 1],
          [9.5, 9.5, 1],
          [5, 5, 226],
        ],
      },
      { name: "binding print", inches: 22.5, pieces: [[2.5, 40, 8]] },
    ],
  },
  // Orchard Lane, American Patchwork & Quilting (allpeoplequilt.com), 2014
  {
    file: "four-patch-orchard",
    finished: [72, 88],
    fabrics: [
      { name: "reds", inches: 63, pieces: [[4.5, 22, 25]], cutsDiffer: SHORT_SET },
      { name: "greens", inches: 63, pieces: [[4.5, 22, 25]], cutsDiffer: SHORT_SET },
      { name: "yellows", inches: 117, pieces: [[8.5, 8.5, 49]] },
      { name: "red print", inches: 27, pieces: [[2.5, 42, 9]] },
    ],
  },
  // Summer Salsa, American Patchwork & Quilting (allpeoplequilt.com), 2014
  {
    file: "salsa-on-point",
    finished: [76.368, 84.853],
    fabrics: [
      { name: "reds", inches: null, pieces: [[2.5, 21, 21]], cutsDiffer: SHORT_SET },
      { name: "white dot", inches: null, pieces: [[2.5, 21, 21]], cutsDiffer: SHORT_SET },
      {
        name: "red floral",
        inches: 139.5,
        pieces: [
          [2.5, 42, 9],
          [9.75, 9.75, 9],
          [6.5, 6.5, 44],
          [5.125, 5.125, 2],
        ],
      },
      { name: "yellow print", inches: 108, pieces: [[6.5, 6.5, 90]] },
    ],
  },
  // Sign of the Times, American Patchwork & Quilting (allpeoplequilt.com), 2021
  {
    file: "rails-and-bars",
    finished: [49, 49],
    fabrics: [
      { name: "prints", inches: 81, pieces: [[1.5, 7.5, 204]] },
      { name: "light grey", inches: 18, pieces: [[1.5, 7.5, 48]] },
      {
        name: "aqua print",
        inches: 31.5,
        pieces: [
          [7.5, 7.5, 4],
          [4, 35.5, 2],
          [4, 28.5, 2],
        ],
      },
      { name: "binding print", inches: 18, pieces: [[2.5, 42, 6]] },
    ],
  },
  // Simple pieced sashing (nine-patch setting), The Quilt Company, 2010
  {
    file: "sashed-nine-patches",
    finished: [66, 82],
    fabrics: [
      { name: "sashing", inches: 81, pieces: [[2.5, 6.5, 178]] },
      {
        name: "cornerstones",
        inches: 18,
        pieces: [[2.5, 2.5, 99]],
        amountDiffers:
          "17 1/2 in of strips: the half yard leaves 1/2 in for straightening, not the inch assumed here",
      },
      { name: "binding print", inches: 24, pieces: [[2.25, 42, 8]] },
    ],
  },
  // So Many Squares, American Patchwork & Quilting (allpeoplequilt.com), 2019
  {
    file: "many-squares",
    finished: [110.25, 110.25],
    fabrics: [
      { name: "lights", inches: 180, pieces: [[2.75, 2.75, 720]] },
      { name: "darks", inches: 360, pieces: [[2.75, 2.75, 1681]] },
      { name: "brown print", inches: 31.5, pieces: [[2.5, 42, 11]] },
    ],
  },
  // Vintage-Inspired Crib Quilt, American Patchwork & Quilting (allpeoplequilt.com), 2013
  {
    file: "vintage-crib",
    finished: [38, 38],
    fabrics: [
      { name: "pink prints", inches: 22.5, pieces: [[1.5, 1.5, 260]] },
      {
        name: "turquoise",
        inches: 24,
        pieces: [
          [2.5, 2.5, 65],
          [1.5, 1.5, 64],
        ],
      },
      {
        name: "green print",
        inches: 40.5,
        pieces: [
          [2.5, 42, 4],
          [2.5, 42, 5],
          [2.5, 2.5, 60],
        ],
        cutsDiffer: SHORT_SET,
      },
      { name: "pink floral", inches: 18, pieces: [[2.5, 42, 5]], cutsDiffer: SHORT_SET },
      { name: "brown", inches: 9, pieces: [[2.5, 2.5, 16]] },
      { name: "pink plaid", inches: 24, pieces: [[2.5, 10.5, 24]] },
    ],
  },
  // Stars and Sashing Wall Hanging, American Patchwork & Quilting (allpeoplequilt.com)
  {
    file: "sashed-star-points",
    finished: [50, 50],
    fabrics: [
      { name: "houndstooth", inches: 36, pieces: [[3.5, 4.375, 72]] },
      {
        name: "aqua floral",
        inches: 45,
        pieces: [
          [3.5, 7.5, 36],
          [3.5, 3.5, 36],
        ],
      },
      { name: "white floral", inches: 27, pieces: [[7.5, 7.5, 9]] },
      { name: "stripe", inches: 18, pieces: [[1.5, 13.5, 24]] },
      { name: "fuchsia dot", inches: 4.5, pieces: [[1.5, 1.5, 16]] },
      { name: "zigzag", inches: 49.5, pieces: [[4, 43.5, 4]] },
      {
        name: "aqua dot",
        inches: 22.5,
        pieces: [
          [4, 4, 4],
          [2.5, 42, 6],
        ],
      },
    ],
  },
  // Fussy-Cut Baby Quilt, American Patchwork & Quilting (allpeoplequilt.com), 2013
  {
    file: "barred-baby-quilt",
    finished: [32.5, 37],
    fabrics: [
      {
        name: "prints",
        inches: null,
        pieces: [
          [2.5, 21, 8],
          [2.25, 21, 4],
          [2, 21, 4],
          [1.75, 21, 8],
        ],
        cutsDiffer: SHORT_SET,
      },
      { name: "rabbits", inches: null, pieces: [[3.5, 10, 4]] },
      {
        name: "green floral",
        inches: 40.5,
        pieces: [
          [2.5, 42, 4],
          [2.5, 33.5, 2],
          [2.5, 33, 2],
          [3.5, 10, 13],
        ],
      },
    ],
  },
];
