import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory, { type Geometry } from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import BufferParameters from 'jsts/org/locationtech/jts/operation/buffer/BufferParameters.js';
import { type Loop, type Region } from '../../src/geometry/index.ts';

const factory = new GeometryFactory();

const coordinates = (points: Loop): Coordinate[] => points.map(({ x, y }) => new Coordinate(x, y));

const closed = (points: Loop): Coordinate[] => coordinates([...points, points[0]!]);

function loopOf(ring: Geometry): Loop {
  return ring.getCoordinates().slice(1).map(({ x, y }) => ({ x, y }));
}

function buffered(geometry: Geometry, distance: number, tolerance: number): Region {
  const parameters = new BufferParameters();
  parameters.setQuadrantSegments(Math.ceil(Math.PI / 4 / Math.acos(1 - tolerance / Math.abs(distance))));
  // Left alone, it straightens the input by a hundredth of the distance first.
  parameters.setSimplifyFactor(0.001);
  const result = BufferOp.bufferOp(geometry, distance, parameters);
  const loops = Array.from({ length: result.getNumGeometries() }, (_, i) => {
    const polygon = result.getGeometryN(i);
    const holes = Array.from({ length: polygon.getNumInteriorRing() }, (_unused, k) => polygon.getInteriorRingN(k));
    return [polygon.getExteriorRing(), ...holes].map(loopOf);
  });
  return { loops: loops.flat().filter((loop) => loop.length > 2) };
}

/** A stroke with round ends and joins by the JTS Topology Suite's buffer. */
export const jstsStroke = (points: Loop, isClosed: boolean, distance: number, tolerance: number): Region =>
  buffered(isClosed ? factory.createLinearRing(closed(points)) : factory.createLineString(coordinates(points)), distance, tolerance);

/** A polygon with holes moved by a signed distance. */
export function jstsOffset([outer, ...holes]: readonly Loop[], distance: number, tolerance: number): Region {
  const ring = (loop: Loop): Geometry => factory.createLinearRing(closed(loop));
  return buffered(factory.createPolygon(ring(outer!), holes.map(ring)), distance, tolerance);
}
