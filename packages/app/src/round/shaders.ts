/**
 * Programs of the view in the round (GLSL ES 3.00). Positions are the piece's own, mm; light runs along `look`, the
 * same for every pixel (parallel projection). Colours are linear until the last step.
 *
 * Resin lets light through, so it is not drawn as a surface. Every face of it adds what its place along the ray
 * weighs, front faces negative, back faces positive; what is left is the way the ray goes through the resin, times
 * its loss of light per mm. Sums know no order: nothing has to be sorted, and layers are seen through each other.
 * A cut moves a face that lies beyond it onto it, and a solid in the way stops the ray: no caps are needed.
 */
const HEAD = `precision highp float;
precision highp int;
uniform vec3 look;
uniform vec4 cut;
uniform vec2 peel;
`

export const BODY_VERTEX = `${HEAD}
in vec3 position;
in vec2 stretch;
uniform mat4 viewMatrix;
uniform mat4 projectionMatrix;
uniform float flatAt;
out vec3 at;
void main() {
  bool gone = stretch.x >= peel.y - 1e-4 || stretch.y <= peel.x + 1e-4;
  at = vec3(position.xy, clamp(position.z, peel.x, peel.y));
  vec3 put = flatAt > -1e6 ? vec3(at.xy, flatAt) : at;
  gl_Position = gone ? vec4(2.0, 2.0, 2.0, 1.0) : projectionMatrix * viewMatrix * vec4(put, 1.0);
}
`

/** What a place in a solid looks like: timber has grain all through, so that cut faces show it too. */
const SUBSTANCE = `
uniform vec3 paint;
uniform vec3 grain;
float hash(vec3 p) {
  p = fract(p * vec3(0.1031, 0.1030, 0.0973));
  p += dot(p, p.yxz + 33.33);
  return fract((p.x + p.y) * p.z);
}
float noise(vec3 p) {
  vec3 i = floor(p);
  vec3 f = fract(p);
  f = f * f * (3.0 - 2.0 * f);
  return mix(
    mix(mix(hash(i), hash(i + vec3(1, 0, 0)), f.x), mix(hash(i + vec3(0, 1, 0)), hash(i + vec3(1, 1, 0)), f.x), f.y),
    mix(mix(hash(i + vec3(0, 0, 1)), hash(i + vec3(1, 0, 1)), f.x), mix(hash(i + vec3(0, 1, 1)), hash(i + vec3(1, 1, 1)), f.x), f.y),
    f.z);
}
vec3 substance(vec3 p) {
  if (grain.z < 0.5) return paint;
  float along = dot(p.xy, grain.xy);
  float across = dot(p.xy, vec2(-grain.y, grain.x));
  vec3 q = vec3(along * 0.006, across * 0.03, p.z * 0.03);
  float bow = noise(q) * 22.0 + noise(q * 2.7) * 6.0;
  float ring = length(vec2(across * 0.55 + bow, p.z + 70.0));
  float year = fract(ring / 6.5);
  float late = smoothstep(0.45, 0.95, year) * (1.0 - smoothstep(0.95, 1.0, year));
  float fibre = noise(vec3(along * 0.05, across * 1.6, p.z * 1.6)) - 0.5;
  return paint * (1.03 - 0.13 * late + 0.07 * fibre);
}
`

export const SOLID_FRAGMENT = `${HEAD}${SUBSTANCE}
in vec3 at;
uniform vec3 lamp;
out vec4 colour;
void main() {
  if (dot(cut.xyz, at) > cut.w) discard;
  vec3 n = normalize(cross(dFdx(at), dFdy(at)));
  n = dot(n, look) > 0.0 ? -n : n;
  float lit = 0.66 + 0.36 * max(0.0, dot(n, lamp));
  colour = vec4(substance(at) * lit, 1.0);
}
`

/** The cut face of a solid: a little lighter than its sides, with the hatching of a section. */
export const CAP_FRAGMENT = `${HEAD}${SUBSTANCE}
in vec3 at;
uniform vec3 ink;
uniform float pixel;
out vec4 colour;
void main() {
  vec2 side = normalize(vec2(-cut.y, cut.x));
  float u = dot(at.xy, side);
  float step = max(4.0, 14.0 * pixel);
  float line = abs(fract((u + at.z) / step) - 0.5) * step;
  float hatch = 1.0 - smoothstep(0.35 * pixel, 1.1 * pixel, (0.5 * step - line) * 0.7071);
  colour = vec4(mix(substance(at) * 1.05, ink, 0.30 * hatch), 1.0);
}
`

/** The cut face of resin: the hatching of a section alone, over all that is seen through it; none where a solid lies in it. */
export const RESIN_CAP_FRAGMENT = `${HEAD}
in vec3 at;
uniform vec4 stroke;
uniform float pixel;
uniform sampler2D solids;
uniform vec2 range;
out vec4 colour;
void main() {
  float stop = mix(range.x, range.y, texelFetch(solids, ivec2(gl_FragCoord.xy), 0).r);
  if (dot(at, look) > stop + 0.05) discard;
  vec2 side = normalize(vec2(-cut.y, cut.x));
  float step = max(5.0, 20.0 * pixel);
  float off = abs(fract((dot(at.xy, side) - at.z) / step) - 0.5) * step;
  float hatch = 1.0 - smoothstep(0.35 * pixel, 1.1 * pixel, (0.5 * step - off) * 0.7071);
  colour = vec4(stroke.rgb, 0.05 + stroke.a * hatch);
}
`

export const RESIN_FRAGMENT = `${HEAD}
in vec3 at;
uniform sampler2D solids;
uniform vec2 range;
uniform float middle;
uniform vec3 corner;
uniform vec3 across;
uniform vec3 upward;
uniform vec3 absorb;
uniform float scatter;
uniform vec3 paint;
layout(location = 0) out vec4 lost;
layout(location = 1) out vec4 milk;
void main() {
  // Where this pixel's ray starts, the same number for every face it meets: what is cut away or hidden then adds
  // and takes off the very same, and weighs nothing.
  vec3 start = corner + gl_FragCoord.x * across + gl_FragCoord.y * upward;
  float lean = dot(cut.xyz, look);
  float past = cut.w - dot(cut.xyz, start);
  bool level = abs(lean) < 1e-5;
  if (level && past < 0.0) discard;
  float cross = level ? 0.0 : past / lean;
  bool enters = !level && lean < 0.0;
  // Places count from where the ray passes the cut, or mid-height: small numbers keep their digits.
  float off = enters ? cross : abs(look.z) > 0.15 ? (middle - start.z) / look.z : 0.5 * (range.y - range.x);
  float place = dot(at - start, look) - off;
  if (enters) place = max(place, 0.0);
  float stop = texelFetch(solids, ivec2(gl_FragCoord.xy), 0).r * (range.y - range.x) - off;
  if (!level && !enters) stop = min(stop, cross - off);
  place = min(place, stop);
  float way = gl_FrontFacing ? -place : place;
  lost = vec4(absorb * way, way);
  milk = vec4(paint, 1.0) * scatter * way;
}
`

export const MASK_FRAGMENT = `${HEAD}
in vec3 at;
out vec4 colour;
void main() {
  if (dot(cut.xyz, at) > cut.w) discard;
  colour = vec4(1.0);
}
`

/** Sheen of resin's outer faces: just enough that its edges and sides are read as a body. */
export const SHEEN_FRAGMENT = `${HEAD}
in vec3 at;
uniform sampler2D solids;
uniform vec2 range;
uniform vec3 lamp;
uniform vec2 ends;
uniform float span;
out vec4 colour;
float pane(float u, float from, float to) {
  return smoothstep(from - 0.012, from + 0.012, u) - smoothstep(to - 0.012, to + 0.012, u);
}
void main() {
  if (dot(cut.xyz, at) > cut.w) discard;
  float stop = mix(range.x, range.y, texelFetch(solids, ivec2(gl_FragCoord.xy), 0).r);
  if (dot(at, look) > stop + 0.02) discard;
  vec3 n = normalize(cross(dFdx(at), dFdy(at)));
  n = dot(n, look) > 0.0 ? -n : n;
  // A level face between the ends of the body lies inside it: there the next of its prisms goes on.
  if (abs(n.z) > 0.9 && at.z > max(ends.x, peel.x) + 0.01 && at.z < min(ends.y, peel.y) - 0.01) discard;
  float face = abs(dot(n, look));
  float glance = pow(1.0 - face, 4.0);
  float shade = 0.2 * (1.0 - max(0.0, dot(n, lamp)));
  // A broad window's light on what lies level.
  float u = dot(at.xy, vec2(0.86, 0.5)) / span;
  float window = abs(n.z) * (pane(u, 0.02, 0.13) + pane(u, 0.145, 0.2) + 0.5 * pane(u, -0.26, -0.21));
  float light = 0.07 + 0.3 * glance + 0.34 * window;
  colour = vec4(vec3(light), shade + light * 0.6);
}
`

/** Edges of solids, hidden by what is solid before them. */
export const EDGE_FRAGMENT = `${HEAD}
in vec3 at;
uniform vec4 stroke;
out vec4 colour;
void main() {
  if (dot(cut.xyz, at) > cut.w + 0.02) discard;
  colour = stroke;
}
`

/** Edges of resin, drawn once all is put together: what is solid is known by its depth. */
export const RESIN_EDGE_FRAGMENT = `${HEAD}
in vec3 at;
uniform sampler2D solids;
uniform vec2 range;
uniform vec4 stroke;
out vec4 colour;
void main() {
  if (dot(cut.xyz, at) > cut.w + 0.02) discard;
  float stop = mix(range.x, range.y, texelFetch(solids, ivec2(gl_FragCoord.xy), 0).r);
  if (dot(at, look) > stop + 0.4) discard;
  colour = stroke;
}
`
