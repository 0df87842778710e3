/** Ribbons for lines laid over the piece. */
import { BENT } from './bendShader.ts';
import { HALF } from './shaders.ts';

export const MOST_STROKE_KINDS = 18;

export const LINE_VERTEX = /* glsl */ `
  /* Both ends of a piece: phi, z, wear (drawn larger), out (true size); see strokes.ts. */
  attribute vec4 from;
  attribute vec4 to;
  attribute vec2 reach;
  /* Side of the line, end of the piece, kind, and mm along the whole line. */
  attribute vec4 look;
  uniform vec2 screen;
  uniform vec4 styles[${MOST_STROKE_KINDS}];
  uniform float bold;
  varying float phi_;
  varying float along_;
  varying float aside_;
  flat varying int kind_;
  ${BENT}
  vec4 seen(vec4 knot, float only) {
    float hole = max(0.0, 1.0 - 3.0 * roll);
    vec3 at = bent(knot.x, knot.y, exaggeration * knot.z + knot.w + hole * only);
    vec4 here = modelViewMatrix * vec4(at, 1.0);
    /* A little nearer to the eye than the metal that it lies on. */
    here.xyz -= 0.012 * radius * normalize(here.xyz);
    return projectionMatrix * here;
  }
  void main() {
    kind_ = int(look.z + 0.5);
    vec4 a = seen(from, reach.x);
    vec4 b = seen(to, reach.y);
    vec2 way = (b.xy / b.w - a.xy / a.w) * screen;
    way = length(way) > 1e-4 ? normalize(way) : vec2(1.0, 0.0);
    vec4 here = look.y < 0.5 ? a : b;
    float wide = bold * styles[kind_].x;
    vec2 aside = wide * (look.x * vec2(-way.y, way.x) + 0.5 * (look.y * 2.0 - 1.0) * way);
    phi_ = mix(from.x, to.x, look.y);
    along_ = look.w;
    aside_ = look.x;
    gl_Position = here + vec4(aside / screen * here.w, 0.0, 0.0);
  }
`;

export const LINE_FRAGMENT = /* glsl */ `
  uniform vec3 colours[${MOST_STROKE_KINDS}];
  uniform vec4 styles[${MOST_STROKE_KINDS}];
  uniform vec3 paper;
  uniform float middle;
  varying float phi_;
  varying float along_;
  varying float aside_;
  flat varying int kind_;
  ${HALF}
  void main() {
    cutHalf(phi_);
    vec4 style = styles[kind_];
    if (fract(along_ / style.y) > style.z) discard;
    gl_FragColor = vec4(abs(aside_) > style.w ? paper : colours[kind_], 1.0);
  }
`;
