/**
 * What conduction needs of a mesh: linear triangles in the half-plane of a body of revolution, or, where `plane` is set, over the
 * cross-section of a long straight bar, of which it then takes one metre.
 */
export interface TriangleMesh {
  /** Distance from the working end, or one way across the section [n, m]. */
  readonly xM: Float64Array
  /** Distance from the axis, or the other way across the section [n, m]. */
  readonly rM: Float64Array
  /** Node triples, counter-clockwise in (x, r) [3 t]. */
  readonly triangles: Uint32Array
  /** Nodes on the surface in order along it. Neither the axis nor a cut of symmetry is a surface. */
  readonly boundaryNode: Uint32Array
  readonly plane?: true
}

/**
 * A body of revolution cut into linear triangles and lumped into nodes and edges (see docs/model.md, rules [HC..]).
 *
 * n nodes, t triangles, e edges, s boundary half-segments. Volumes, conductances and areas are for the full turn.
 * Nodes are numbered by reverse Cuthill-McKee, so that an envelope factorisation stays small. Edges that would carry no heat (diagonals of
 * right-angled cells) are not listed. Conduction needs only `volumeM3`, the edges and the half-segments; the triangles are for pictures and interpolation.
 */
export interface AxisymmetricMesh extends TriangleMesh {
  /** Volume that belongs to each node [n, m3]; sums to the volume of the body. */
  readonly volumeM3: Float64Array
  /** Ends of each edge [e]. */
  readonly edgeFrom: Uint32Array
  readonly edgeTo: Uint32Array
  /** Heat flow through the edge for unit conductivity and unit temperature difference [e, m]. */
  readonly edgeConductanceM: Float64Array
  /** Boundary half-segments: the node that each belongs to [s], its area [s, m2] and its reach along the axis [s, m]. */
  readonly surfaceNode: Uint32Array
  readonly surfaceAreaM2: Float64Array
  readonly surfaceLowM: Float64Array
  readonly surfaceHighM: Float64Array
  /** Shortest distance of each node to the surface [n, m]; 0 on it. The axis is not a surface. */
  readonly depthM: Float64Array
  /** Nodes on the surface in order along the outline, from the axis at the working end to the axis at the other. */
  readonly boundaryNode: Uint32Array
  /** The node of each point that was asked for, in the order of asking. */
  readonly askedNode: Uint32Array
}

/** How finely a body is cut. `sketch` answers while a handle is dragged, `draft` tries a route, `normal` is a forecast, `fine` a check on it. */
export type MeshGrade = 'sketch' | 'draft' | 'normal' | 'fine'
