/** Films laid over the wall; see layersPart.ts. */
import { BENT } from './bendShader.ts';
import { HALF, STROKE } from './shaders.ts';

export const LAYER_VERTEX = /* glsl */ `
  attribute vec2 place;
  /* Deviation, metal to take off, what a first pass may take of it; mm per side. */
  attribute vec3 amounts;
  /* Which film, and whether on the wall (1) or at the target (0). */
  attribute vec2 film;
  varying vec2 place_;
  varying vec3 amounts_;
  varying vec2 film_;
  ${BENT}
  void main() {
    place_ = place;
    amounts_ = amounts;
    film_ = film;
    vec3 at = bent(place.x, place.y, film.y * exaggeration * amounts.x);
    vec4 here = modelViewMatrix * vec4(at, 1.0);
    here.xyz -= 0.004 * radius * normalize(here.xyz);
    gl_Position = projectionMatrix * here;
  }
`;

export const LAYER_FRAGMENT = /* glsl */ `
  /* Whether metal to take off, low places and a first pass are shown. */
  uniform vec3 films;
  uniform vec3 copper;
  uniform vec3 teal;
  uniform vec3 ink;
  uniform vec3 ground;
  uniform float least;
  uniform float pixel;
  uniform float radius;
  uniform float middle;
  varying vec2 place_;
  varying vec3 amounts_;
  varying vec2 film_;
  ${HALF}
  ${STROKE}

  /* Stripes across the screen, so many CSS pixels apart. */
  float striped(float apart, float way, float share) {
    float v = fract((gl_FragCoord.x + way * gl_FragCoord.y) / (apart * pixel));
    return step(v, share);
  }

  /* Edge of a film: where v rises past the least thickness. */
  float rimmed(float v, float wide) {
    return stroke(v - least, wide * pixel, fwidth(v));
  }

  /* What lacks: a skin at the target's size, with rings as a coil, through which the wall is seen. */
  vec4 low() {
    float turns = place_.y / (0.2 * radius);
    float coil = stroke(fract(turns) - 0.5, 1.2 * pixel, fwidth(turns));
    vec4 skin = vec4(teal, 0.22 + 0.6 * coil);
    return mix(skin, vec4(teal, 1.0), rimmed(amounts_.x, 2.4));
  }

  /* Metal to take off, and the stripes of what a first pass takes. */
  vec4 onWall() {
    vec4 colour = vec4(0.0);
    if (films.x > 0.5 && amounts_.y > least) {
      colour = vec4(copper, 0.26);
      colour = mix(colour, vec4(ink, 1.0), rimmed(amounts_.y, 1.2));
    }
    if (films.z > 0.5 && amounts_.z > least) {
      colour = mix(colour, vec4(ink, 0.85), striped(9.0, 1.0, 0.22));
      colour = mix(colour, vec4(ink, 1.0), rimmed(amounts_.z, 2.6) * striped(9.0, 0.0, 0.6));
    }
    return colour;
  }

  /* Seen from the side: share runs from the target to the wall. */
  vec4 side() {
    float off = -amounts_.x;
    if (off > least && films.x + films.z > 0.5) {
      vec4 colour = vec4(copper, films.x > 0.5 ? 1.0 : 0.0);
      float taken = (1.0 - film_.y) * off;
      if (films.z > 0.5 && taken < amounts_.z) {
        colour = mix(vec4(mix(copper, ground, 0.55), 1.0), vec4(ink, 1.0), striped(7.0, 1.0, 0.3));
      }
      return colour;
    }
    if (amounts_.x > least && films.y > 0.5) {
      return mix(vec4(teal, 0.4), vec4(teal, 1.0), striped(7.0, -1.0, 0.3));
    }
    return vec4(0.0);
  }

  void main() {
    if (film_.x < 2.5) cutHalf(place_.x);
    vec4 colour = vec4(0.0);
    if (film_.x > 1.5) colour = side();
    else if (film_.x > 0.5) colour = onWall();
    else if (films.y > 0.5 && amounts_.x > least) colour = low();
    if (colour.a < 0.02) discard;
    gl_FragColor = colour;
  }
`;
