import type { Point } from '../../geometry/index.ts';
import type { Outline } from '../artwork.ts';
import type { Scale } from './scale.ts';

export interface PictureOptions {
  /** Real width in mm, of the whole picture or of the lettering in it; 0 goes by the resolution the file states. */
  readonly width: number;
  readonly widthOf: 'picture' | 'lettering';
  /** Which of the two the lettering is; `either` lets the picture's edges tell. */
  readonly lettering: 'lighter' | 'darker' | 'either';
  /** Where the edge lies between ground (0) and lettering (1); 0 is in the middle. */
  readonly threshold: number;
  /** Shapes that cover less than a disc this wide are dropped, and such holes filled, mm; 0 is a quarter of the strokes' width. */
  readonly speckSize: number;
  /** Greatest distance of an outline from the edge found, mm; 0 goes by the pixels and their noise. */
  readonly tolerance: number;
}

/** Outlines of the lettering in a picture, in mm, y up from the picture's lower left corner, and what was seen on the way. */
export interface PictureTracing {
  readonly ok: true;
  readonly outlines: readonly Outline[];
  readonly seen: Sighting;
}

export interface Sighting {
  /** Size of the picture as the file has it, in pixels. */
  readonly columns: number;
  readonly rows: number;
  readonly scale: Scale;
  /** Width of the strokes in pixels worked on, by area and perimeter. */
  readonly strokePixels: number;
  /** Light of the ground less that of the lettering, as a share of the lighter one. */
  readonly contrast: number;
  /** Standard deviation of the noise, as a share of the step from ground to lettering. */
  readonly noise: number;
  readonly lettering: 'lighter' | 'darker';
  readonly shapes: number;
  readonly specks: number;
  readonly pinholes: number;
  /** Where shapes are cut off by the picture's edge, mm. */
  readonly cutOff: readonly Point[];
}
