/** The roll-out once more, for what the graphics card bends by itself: the same as figures/bend.ts. */

export const BENT = /* glsl */ `
  uniform float radius;
  uniform float roll;
  uniform float middle;
  uniform float exaggeration;
  float sinc(float a) {
    return abs(a) < 1e-3 ? 1.0 - a * a / 6.0 : sin(a) / a;
  }
  /* A place phi from the middle of the map, z deep, lifted out of the bore by so many mm. */
  vec3 bent(float phi, float z, float lift) {
    float a = (1.0 - roll) * phi;
    float along = radius * phi * sinc(a);
    float outw = radius - radius * phi * sinc(0.5 * a) * sin(0.5 * a) + lift * cos(a);
    along += lift * sin(a);
    float c = cos(middle);
    float s = sin(middle);
    return vec3(along * c + outw * s, -along * s + outw * c, -z);
  }
`;

/** How the piece stands, for every shader that bends; one object, shared, so that it is set once. */
export function bendUniforms() {
  return {
    radius: { value: 1 },
    roll: { value: 0 },
    middle: { value: 0 },
    exaggeration: { value: 1 },
    half_: { value: 0 },
    away: { value: 0 },
    /** Pixels of the canvas a CSS pixel, and thicker where the theme wants it. */
    pixel: { value: 1 },
  };
}

export type BendUniforms = ReturnType<typeof bendUniforms>;
