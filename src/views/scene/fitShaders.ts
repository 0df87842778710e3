/** Bushings and pin; see fitPart.ts. */
import { LIGHT, STROKE } from './shaders.ts';

export const FIT_VERTEX = /* glsl */ `
  /* Share of the way round (-1 to 1), radius, depth, and share of the way across its strip. */
  attribute vec4 place;
  /* Normal: out from the axis, out of face A, along the way round; then 1 for the pin, 0 for a bushing. */
  attribute vec4 facing;
  uniform float half_;
  uniform float away;
  varying vec3 normal_;
  varying float across_;
  varying float pin_;
  void main() {
    /* A bushing is cut with the piece, and what is left of it lies opposite the half that is away. */
    bool cut = half_ > 0.5 && facing.w < 0.5;
    float theta = (cut ? away : 0.0) + 3.14159265 + place.x * (cut ? 1.57079633 : 3.14159265);
    vec2 way = vec2(sin(theta), cos(theta));
    vec3 n = vec3(facing.x * way + facing.z * vec2(way.y, -way.x), facing.y);
    normal_ = normalMatrix * n;
    across_ = place.w;
    pin_ = facing.w;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(place.y * way, -place.z, 1.0);
  }
`;

export const FIT_FRAGMENT = /* glsl */ `
  uniform vec3 bushing;
  uniform vec3 pin;
  uniform vec3 ink;
  uniform float pixel;
  uniform float roll;
  varying vec3 normal_;
  varying float across_;
  varying float pin_;
  ${LIGHT}
  ${STROKE}
  void main() {
    /* As the hole opens, bushing and pin go: grain by grain, so that nothing needs sorting. */
    float grain = fract(52.9829189 * fract(dot(floor(gl_FragCoord.xy), vec2(0.06711056, 0.00583715))));
    if (grain < smoothstep(0.0, 0.12, roll) * 1.001) discard;
    vec3 colour = mix(bushing, pin, pin_) * lit(normal_, 0.84, 0.24);
    float pace = fwidth(across_);
    float edge = max(stroke(across_, 1.6 * pixel, pace), stroke(1.0 - across_, 1.6 * pixel, pace));
    gl_FragColor = vec4(mix(colour, ink, 0.7 * edge), 1.0);
  }
`;
