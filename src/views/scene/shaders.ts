/**
 * How the piece is painted. Colours are written as the screen wants them (sRGB) and shaded only gently, so that
 * a colour on the wall is that of the key. Colours, contour lines and their dashes follow the same steps as the
 * flat map; marks on the wall (keep-outs, seat, cursor) are painted, not modelled, and cost no draw call.
 */

/** Most levels and keep-outs that the paint has room for. */
export const MOST_LEVELS = 30;
export const MOST_KEEPOUTS = 8;
/** Colours that the wall runs through. */
export const RAMP_TEXELS = 256;

export const LIGHT = /* glsl */ `
  float lit(vec3 n, float base, float gain) {
    return base + gain * dot(normalize(n), normalize(vec3(-0.4, 0.5, 0.77)));
  }
`;

export const STROKE = /* glsl */ `
  /* A line where v is zero, wide in pixels; pace is what v changes by from pixel to pixel, which a v with jumps
     cannot tell by itself. */
  float stroke(float v, float wide, float pace) {
    return 1.0 - smoothstep(wide - 0.7, wide + 0.7, 2.0 * abs(v) / max(pace, 1e-9));
  }
`;

export const HALF = /* glsl */ `
  uniform float half_;
  uniform float away;
  /* In half, what lies about the clock position away is taken off. */
  void cutHalf(float phi) {
    if (half_ > 0.5 && cos(phi + middle - away) > 1e-4) discard;
  }
`;

export const WALL_VERTEX = /* glsl */ `
  attribute vec2 place;
  attribute float deviation;
  attribute float doubt;
  attribute float give;
  varying vec3 normal_;
  varying vec2 place_;
  varying float deviation_;
  varying float doubt_;
  varying float give_;
  void main() {
    normal_ = normalMatrix * normal;
    place_ = place;
    deviation_ = deviation;
    doubt_ = doubt;
    give_ = give;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  }
`;

export const WALL_FRAGMENT = /* glsl */ `
  uniform float step_;
  uniform float first;
  uniform int count;
  uniform float wanted;
  uniform sampler2D ramp;
  uniform vec2 rampRange;
  uniform vec3 lines[${MOST_LEVELS}];
  uniform vec3 ink;
  uniform vec3 ground;
  uniform vec3 hole;
  uniform vec3 unknown;
  uniform float radius;
  uniform float pixel;
  uniform vec4 keepouts[${MOST_KEEPOUTS}];
  uniform float holes[${MOST_KEEPOUTS}];
  uniform int keepoutCount;
  uniform vec4 seats;
  uniform vec3 cursor;
  varying vec3 normal_;
  varying vec2 place_;
  varying float deviation_;
  varying float doubt_;
  varying float give_;
  uniform float middle;
  ${LIGHT}
  ${HALF}

  /* Levels up to the m-th multiple of the step; zero is no level. */
  int levelsTo(float m) {
    return int(m - first) + 1 - (first < 0.0 && m >= 0.0 ? 1 : 0);
  }
  ${STROKE}
  float apart(float phi, float from) {
    return abs(mod(phi - from + 3.14159265, 6.2831853) - 3.14159265);
  }

  vec3 coloured() {
    float share = (deviation_ - rampRange.x) / (rampRange.y - rampRange.x);
    /* The first and the last colour lie in the middles of their texels. */
    float inset = 0.5 / ${RAMP_TEXELS}.0;
    return texture2D(ramp, vec2(mix(inset, 1.0 - inset, clamp(share, 0.0, 1.0)), 0.5)).rgb;
  }

  vec3 contoured(vec3 colour) {
    float m = floor(deviation_ / step_ + 0.5);
    int level = levelsTo(m) - 1;
    if (m == 0.0 || level < 0 || level >= count) return colour;
    float v = deviation_ - m * step_;
    /* Low levels are dashed, along whichever way of the screen the line runs. */
    vec2 slope = vec2(dFdx(deviation_), dFdy(deviation_));
    float run = abs(slope.x) > abs(slope.y) ? gl_FragCoord.y : gl_FragCoord.x;
    float dash = m < 0.0 ? 1.0 : step(fract(run / (8.0 * pixel)), 0.62);
    return mix(colour, lines[level], dash * stroke(v, 1.1 * pixel, fwidth(deviation_)));
  }

  /* The edge of metal, where v is zero: a heavy line with teeth on the side where v is below zero. */
  vec3 edge(vec3 colour, float v) {
    float pace = fwidth(v);
    vec2 slope = vec2(dFdx(v), dFdy(v));
    float run = (abs(slope.x) > abs(slope.y) ? gl_FragCoord.y : gl_FragCoord.x) / pixel;
    float far = -v / max(pace, 1e-9) / pixel;
    float tooth = step(0.0, far) * step(far, 6.0) * step(fract(run / 16.0), 0.11);
    colour = mix(colour, ground, stroke(v, 4.5 * pixel, pace));
    return mix(colour, ink, max(tooth, stroke(v, 2.5 * pixel, pace)));
  }

  /* Metal that surely comes off stands where the wall is small even at its largest. The map says besides where metal
     possibly stands; here that would crowd it. */
  vec3 edged(vec3 colour) {
    if (wanted < 0.5 || doubt_ > 8.0) return colour;
    return edge(colour, deviation_ + give_);
  }

  vec3 hatched(vec3 colour) {
    if (doubt_ <= 1.0) return colour;
    float stripe = abs(fract((gl_FragCoord.x - gl_FragCoord.y) / (8.5 * pixel)) - 0.5);
    vec3 pale = mix(doubt_ > 8.0 ? unknown : colour, ground, 0.42);
    return mix(pale, ink, 0.7 * (1.0 - smoothstep(0.07, 0.13, stripe)));
  }

  vec3 marked(vec3 colour) {
    for (int i = 0; i < ${MOST_KEEPOUTS}; i++) {
      if (i >= keepoutCount) break;
      vec4 k = keepouts[i];
      vec2 d = vec2(k.w >= 3.14 ? 0.0 : apart(place_.x, k.x) / k.w,
                    abs(place_.y - 0.5 * (k.y + k.z)) / (0.5 * (k.z - k.y)));
      float edge = (holes[i] > 0.5 ? length(d) : max(d.x, d.y)) - 1.0;
      /* A hole is dark, what is only left alone is pale. */
      if (edge < 0.0) colour = holes[i] > 0.5 ? mix(hole, colour, 0.12) : mix(colour, ground, 0.75);
      vec2 pace = fwidth(place_) / vec2(k.w, 0.5 * (k.z - k.y));
      float near = step(edge, 1.0);
      colour = mix(colour, ink, near * stroke(edge, 1.6 * pixel, max(pace.x, pace.y)));
    }
    for (int i = 0; i < 4; i++) {
      if (seats[i] < 0.0) continue;
      float dash = step(fract(place_.x * radius / (0.12 * radius)), 0.7);
      colour = mix(colour, ink, dash * stroke(place_.y - seats[i], 1.6 * pixel, fwidth(place_.y)));
    }
    return colour;
  }

  vec3 pointedAt(vec3 colour) {
    if (cursor.z < 0.5) return colour;
    vec2 d = vec2(radius * apart(place_.x, cursor.x), place_.y - cursor.y);
    float far = length(d);
    float ring = 0.075 * radius;
    vec2 pace = vec2(radius, 1.0) * fwidth(place_);
    vec2 lines_ = vec2(stroke(d.x, 1.0 * pixel, pace.x), stroke(d.y, 1.0 * pixel, pace.y));
    float cross_ = max(lines_.x, lines_.y) * step(ring, far);
    float round_ = dot(d / max(far, 1e-6), pace);
    round_ = max(abs(round_), 0.5 * min(pace.x, pace.y));
    colour = mix(colour, ground, stroke(far - ring, 4.5 * pixel, round_));
    return mix(colour, ink, max(cross_ * 0.75, stroke(far - ring, 2.0 * pixel, round_)));
  }

  void main() {
    cutHalf(place_.x);
    vec3 colour = pointedAt(marked(edged(hatched(contoured(coloured())))));
    gl_FragColor = vec4(colour * lit(normal_, 0.9, 0.13), 1.0);
  }
`;

export const BOSS_VERTEX = /* glsl */ `
  attribute vec2 place;
  attribute float face;
  varying float deep_;
  varying vec3 normal_;
  varying vec2 place_;
  varying float face_;
  void main() {
    normal_ = normalMatrix * normal;
    place_ = place;
    face_ = face;
    deep_ = -position.z;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  }
`;

export const BOSS_FRAGMENT = /* glsl */ `
  uniform vec4 keepouts[${MOST_KEEPOUTS}];
  uniform float holes[${MOST_KEEPOUTS}];
  uniform int keepoutCount;
  uniform vec3 hole;
  varying float deep_;
  uniform vec3 metal;
  uniform vec3 cutMetal;
  uniform vec3 ink;
  uniform float pixel;
  varying vec3 normal_;
  varying vec2 place_;
  varying float face_;
  uniform float middle;
  ${LIGHT}
  ${HALF}

  ${STROKE}

  /* Holes through the metal, as they come out on the outside. */
  vec3 bored(vec3 colour) {
    for (int i = 0; i < ${MOST_KEEPOUTS}; i++) {
      if (i >= keepoutCount) break;
      if (holes[i] < 0.5) continue;
      vec4 k = keepouts[i];
      float round_ = abs(mod(place_.x - k.x + 3.14159265, 6.2831853) - 3.14159265);
      vec2 d = vec2(round_ / k.w, (deep_ - 0.5 * (k.y + k.z)) / (0.5 * (k.z - k.y)));
      float edge = length(d) - 1.0;
      colour = mix(colour, hole, 1.0 - smoothstep(-0.06, 0.06, edge));
    }
    return colour;
  }

  void main() {
    if (face_ < 2.5) cutHalf(place_.x);
    vec3 colour = face_ > 2.5 ? cutMetal : metal;
    colour *= lit(normal_, 0.82, 0.24);
    /* Hour ticks on the near rim, long ones at 12, 3, 6 and 9. */
    if (face_ < 0.5) {
      float hours = (place_.x + middle) * 1.90985932;
      float near = hours - floor(hours + 0.5);
      float quarter = step(abs(mod(floor(hours + 0.5) + 0.5, 3.0) - 0.5), 0.1);
      float reach = mix(0.1, 0.2, quarter);
      colour = mix(colour, ink, 0.85 * stroke(near, (1.2 + quarter) * pixel, fwidth(hours)) * step(place_.y, reach));
    }
    if (face_ > 1.5 && face_ < 2.5) colour = bored(colour);
    if (face_ < 1.5 || face_ > 2.5) {
      float edge = max(stroke(place_.y, 1.6 * pixel, fwidth(place_.y)), stroke(1.0 - place_.y, 1.6 * pixel, fwidth(place_.y)));
      colour = mix(colour, ink, 0.55 * edge);
    }
    gl_FragColor = vec4(colour, 1.0);
  }
`;

/** Letters that face the eye and keep their size on the screen; `axis` turns an arrow the way it points. */
export const MARK_VERTEX = /* glsl */ `
  attribute vec3 centre;
  attribute vec3 axis;
  attribute vec2 corner;
  attribute vec2 uv_;
  attribute float kept_;
  uniform vec2 screen;
  varying vec2 at;
  void main() {
    at = uv_;
    vec4 clip = projectionMatrix * (modelViewMatrix * vec4(centre, 1.0));
    vec2 sized = corner * kept_;
    vec2 turned = sized;
    if (dot(axis, axis) > 0.0) {
      vec4 ahead = projectionMatrix * (modelViewMatrix * vec4(centre + axis, 1.0));
      vec2 way = normalize((ahead.xy / ahead.w - clip.xy / clip.w) * screen);
      turned = sized.x * vec2(way.y, -way.x) + sized.y * way;
    }
    gl_Position = vec4(clip.xy + turned * 2.0 / screen * clip.w, clip.zw);
  }
`;

export const MARK_FRAGMENT = /* glsl */ `
  uniform sampler2D letters;
  varying vec2 at;
  void main() {
    vec4 colour = texture2D(letters, at);
    if (colour.a < 0.05) discard;
    gl_FragColor = colour;
  }
`;

/** Pins: each has every head, and shows the one of its kind. */
export const PIN_VERTEX = /* glsl */ `
  attribute vec3 tint;
  attribute float kind;
  /* Which kind of pin a corner belongs to; below zero it belongs to all. */
  attribute float head;
  varying vec3 normal_;
  varying vec3 tint_;
  void main() {
    mat4 here = modelViewMatrix * instanceMatrix;
    normal_ = mat3(here) * normal;
    tint_ = tint;
    float there = head < -0.5 || abs(head - kind) < 0.5 ? 1.0 : 0.0;
    gl_Position = projectionMatrix * here * vec4(there * position, 1.0);
  }
`;

export const PIN_FRAGMENT = /* glsl */ `
  varying vec3 normal_;
  varying vec3 tint_;
  ${LIGHT}
  void main() {
    gl_FragColor = vec4(tint_ * lit(normal_, 0.85, 0.3), 1.0);
  }
`;
