/** The few parts of jsts that the tests use; the package's own types do not reach these files. */
declare module 'jsts/org/locationtech/jts/geom/Coordinate.js' {
  export default class Coordinate {
    constructor(x: number, y: number);
    x: number;
    y: number;
  }
}

declare module 'jsts/org/locationtech/jts/geom/GeometryFactory.js' {
  import type Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';

  export interface Geometry {
    getCoordinates(): Coordinate[];
    getNumGeometries(): number;
    getGeometryN(n: number): Polygon;
  }
  export interface Polygon extends Geometry {
    getExteriorRing(): Geometry;
    getNumInteriorRing(): number;
    getInteriorRingN(n: number): Geometry;
  }
  export default class GeometryFactory {
    createLineString(coordinates: Coordinate[]): Geometry;
    createLinearRing(coordinates: Coordinate[]): Geometry;
    createPolygon(shell: Geometry, holes: Geometry[]): Polygon;
  }
}

declare module 'jsts/org/locationtech/jts/operation/buffer/BufferParameters.js' {
  export default class BufferParameters {
    setQuadrantSegments(count: number): void;
    setSimplifyFactor(factor: number): void;
  }
}

declare module 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js' {
  import type { Geometry } from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
  import type BufferParameters from 'jsts/org/locationtech/jts/operation/buffer/BufferParameters.js';

  const BufferOp: { bufferOp(geometry: Geometry, distance: number, parameters: BufferParameters): Geometry };
  export default BufferOp;
}
