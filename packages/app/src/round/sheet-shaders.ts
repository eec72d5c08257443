/** Programs that paint over the whole picture (GLSL ES 3.00). */

export const SHEET_VERTEX = `precision highp float;
in vec3 position;
out vec2 uv;
void main() {
  uv = position.xy * 0.5 + 0.5;
  gl_Position = vec4(position.xy, 0.0, 1.0);
}
`

/**
 * The shade under the piece (red): its outline, softened widely and closely, fallen a little from the light; and how
 * far inside the outline a place lies (green): half on it, one well inside.
 */
export const SOFT_FRAGMENT = `precision highp float;
in vec2 uv;
uniform sampler2D mask;
uniform vec2 blur;
uniform vec2 fall;
out vec4 colour;
void main() {
  float wide = 0.0;
  float close = 0.0;
  float inner = 0.0;
  for (int i = 0; i < 40; i++) {
    float r = sqrt((float(i) + 0.5) / 40.0);
    float a = float(i) * 2.399963;
    vec2 o = r * vec2(cos(a), sin(a)) * blur;
    wide += texture(mask, uv + fall + o).r;
    close += texture(mask, uv + fall * 0.25 + o * 0.3).r;
    inner += texture(mask, uv + o * 0.7).r;
  }
  colour = vec4((0.55 * wide + 0.45 * close) / 40.0, inner / 40.0, 0.0, 0.0);
}
`

/** Paper, its shade, what is solid, and the resin over them. */
export const SHEET_FRAGMENT = `precision highp float;
in vec2 uv;
uniform sampler2D shown;
uniform sampler2D lost;
uniform sampler2D milk;
uniform sampler2D shade;
uniform vec3 paper;
uniform vec3 plate;
uniform float dark;
out vec4 colour;
vec3 coded(vec3 c) {
  return mix(12.92 * c, 1.055 * pow(max(c, vec3(0.0)), vec3(1.0 / 2.4)) - 0.055, step(0.0031308, c));
}
void main() {
  vec2 foot = texture(shade, uv).rg;
  vec4 l = texture(lost, uv);
  vec4 m = texture(milk, uv);
  vec4 solid = texture(shown, uv);
  vec3 ground = paper * (1.0 - dark * foot.r);
  // Resin lies on white paper, as on the plan, however dim the screen is; not so where a ray leaves by its side.
  ground = mix(ground, plate, clamp(l.a / 0.4, 0.0, 1.0) * smoothstep(0.5, 1.0, foot.g));
  vec3 c = mix(ground, solid.rgb / max(solid.a, 1e-4), solid.a);
  // Kubelka-Munk of a layer that absorbs only: what lies behind, times exp(-2 K t).
  c *= exp(-2.0 * clamp(l.rgb, 0.0, 20.0));
  float h = max(0.0, m.a) / (1.0 + max(0.0, m.a));
  c = mix(c, m.rgb / max(m.a, 1e-6), h);
  colour = vec4(coded(c), 1.0);
}
`
