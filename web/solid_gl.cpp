// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See solid_gl.h. The page's own framebuffer has neither depth nor smooth edges, so bodies are drawn into one that has
// both, and the result is copied to the texture.
#include "web/solid_gl.h"

#include <GLES3/gl3.h>

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace tinwright::web {
namespace {

using view::Colour;
using view::SolidScene;

constexpr GLsizei kSamples = 4;       // every WebGL 2 has these
constexpr std::size_t kMostKept = 8;  // pictures, more than are in sight; the one longest unseen goes

constexpr const char* kFaceVertex = R"(#version 300 es
uniform mat4 clip;
uniform mat3 turned;
layout(location = 0) in vec3 at;
layout(location = 1) in vec3 normal;
layout(location = 2) in float part;
out vec3 facing, place;
flat out int kind;
void main() {
  kind = int(part);
  facing = turned * normal;
  place = at;
  gl_Position = clip * vec4(at, 1);
  if (kind == 1) gl_Position.z -= 2e-5 * gl_Position.w;  // dough lies on the filling where both are cut
})";

// Light from all over the sky, most from above left. Lines across the dough tell it apart without colour.
constexpr const char* kFaceFragment = R"(#version 300 es
precision highp float;
uniform vec3 parts[3], ink;
uniform float hatch;
in vec3 facing, place;
flat in int kind;
out vec4 colour;
void main() {
  float light = 0.5 + 0.5 * dot(normalize(facing), vec3(-0.36, 0.64, 0.68));
  vec3 shown = parts[kind] * mix(0.6, 1.06, light);
  if (kind == 1) {
    float across = (place.x + 0.6 * place.y + place.z) / hatch;
    float soft = fwidth(across);
    float line = 1.0 - smoothstep(0.07, 0.07 + soft, abs(fract(across) - 0.5));
    shown = mix(shown, ink, 0.45 * line * clamp(1.5 - 2.0 * soft, 0.0, 1.0));
  }
  colour = vec4(shown, 1);
})";

// An edge as a strip of four corners, a little nearer than the faces it lies on.
constexpr const char* kEdgeVertex = R"(#version 300 es
uniform mat4 clip;
uniform vec3 size;
layout(location = 0) in vec3 from;
layout(location = 1) in vec3 to;
void main() {
  vec4 a = clip * vec4(from, 1), b = clip * vec4(to, 1);
  vec2 along = normalize((b.xy / b.w - a.xy / a.w) * size.xy + vec2(1e-6, 0));
  vec4 end = gl_VertexID > 1 ? b : a;
  float side = (gl_VertexID & 1) == 0 ? -1.0 : 1.0;
  end.xy += vec2(-along.y, along.x) * side * size.z / size.xy * end.w;
  end.z -= 5e-4 * end.w;
  gl_Position = end;
})";

constexpr const char* kEdgeFragment = R"(#version 300 es
precision mediump float;
uniform vec3 ink;
out vec4 colour;
void main() { colour = vec4(ink, 1); })";

struct Picture {
  SolidScene scene;
  GLuint texture = 0, faces = 0, edges = 0;  // the latter two are vertex arrays
  GLuint buffers[2] = {0, 0};
};

/// What all pictures share, and the pictures, the one seen last at the end.
struct Studio {
  GLuint face_program = 0, edge_program = 0;
  GLuint framebuffer = 0, colour = 0, depth = 0, copy = 0;
  int width = 0, height = 0;  // of the framebuffer
  bool is_refused = false;
  std::vector<Picture> pictures;
};

Studio& studio() {
  static Studio only;
  return only;
}

GLuint program_of(const char* vertex, const char* fragment) {
  const GLuint program = glCreateProgram();
  const auto attach = [&](GLenum kind, const char* text) {
    const GLuint shader = glCreateShader(kind);
    glShaderSource(shader, 1, &text, nullptr);
    glCompileShader(shader);
    glAttachShader(program, shader);
    glDeleteShader(shader);
  };
  attach(GL_VERTEX_SHADER, vertex);
  attach(GL_FRAGMENT_SHADER, fragment);
  glLinkProgram(program);
  return program;
}

void put_colour(GLuint program, const char* name, Colour c) {
  glUniform3f(glGetUniformLocation(program, name), static_cast<float>(c.red) / 255.0f,
              static_cast<float>(c.green) / 255.0f, static_cast<float>(c.blue) / 255.0f);
}

void put_matrix(GLuint program, const char* name, const glm::mat4& matrix) {
  glUniformMatrix4fv(glGetUniformLocation(program, name), 1, GL_FALSE, &matrix[0][0]);
}

/// A framebuffer of that size to draw into; false when there is none to be had.
bool make_framebuffer(Studio& s, int width, int height) {
  if (s.width == width && s.height == height) return true;
  if (s.framebuffer == 0) {
    glGenFramebuffers(1, &s.framebuffer);
    glGenFramebuffers(1, &s.copy);
    glGenRenderbuffers(1, &s.colour);
    glGenRenderbuffers(1, &s.depth);
  }
  glBindFramebuffer(GL_FRAMEBUFFER, s.framebuffer);
  const auto attach = [&](GLuint buffer, GLenum format, GLenum place) {
    glBindRenderbuffer(GL_RENDERBUFFER, buffer);
    glRenderbufferStorageMultisample(GL_RENDERBUFFER, kSamples, format, width, height);
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, place, GL_RENDERBUFFER, buffer);
  };
  attach(s.colour, GL_RGBA8, GL_COLOR_ATTACHMENT0);
  attach(s.depth, GL_DEPTH_COMPONENT24, GL_DEPTH_ATTACHMENT);
  s.width = width;
  s.height = height;
  return glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE;
}

bool make_texture(const Studio& s, Picture& picture, int width, int height) {
  if (picture.texture == 0) glGenTextures(1, &picture.texture);
  glBindTexture(GL_TEXTURE_2D, picture.texture);
  glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, width, height, 0, GL_RGBA, GL_UNSIGNED_BYTE, nullptr);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
  glBindFramebuffer(GL_FRAMEBUFFER, s.copy);
  glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, picture.texture, 0);
  return glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE;
}

/// Fills the buffer bound to `array` and says what lies in it: floats, `stride` of them for each item.
void upload(GLuint array, GLuint buffer, const void* data, std::size_t bytes, int stride,
            std::initializer_list<int> widths, GLuint divisor) {
  glBindVertexArray(array);
  glBindBuffer(GL_ARRAY_BUFFER, buffer);
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(bytes), data, GL_STATIC_DRAW);
  GLuint place = 0;
  std::size_t offset = 0;
  for (const int width : widths) {
    glEnableVertexAttribArray(place);
    glVertexAttribPointer(place, width, GL_FLOAT, GL_FALSE, stride, reinterpret_cast<const void*>(offset));
    glVertexAttribDivisor(place, divisor);
    offset += static_cast<std::size_t>(width) * sizeof(float);
    ++place;
  }
}

void upload_solid(Picture& picture, const Solid& solid) {
  if (picture.faces == 0) {
    glGenVertexArrays(1, &picture.faces);
    glGenVertexArrays(1, &picture.edges);
    glGenBuffers(2, picture.buffers);
  }
  constexpr int kCorner = sizeof(SolidCorner), kEdge = 2 * sizeof(glm::vec3);
  static_assert(kCorner == 7 * sizeof(float));
  upload(picture.faces, picture.buffers[0], solid.corners.data(), solid.corners.size() * kCorner, kCorner, {3, 3, 1},
         0);
  upload(picture.edges, picture.buffers[1], solid.edges.data(), solid.edges.size() * kEdge, kEdge, {3, 3}, 1);
}

void draw_faces(const Studio& s, const Picture& picture, const SolidScene& scene) {
  const GLuint program = s.face_program;
  glUseProgram(program);
  put_matrix(program, "clip", scene.clip);
  glUniformMatrix3fv(glGetUniformLocation(program, "turned"), 1, GL_FALSE, &scene.facing[0][0]);
  put_colour(program, "parts[0]", scene.parts[0]);
  put_colour(program, "parts[1]", scene.parts[1]);
  put_colour(program, "parts[2]", scene.parts[2]);
  put_colour(program, "ink", scene.ink);
  glUniform1f(glGetUniformLocation(program, "hatch"), scene.hatch);
  glEnable(GL_CULL_FACE);
  glBindVertexArray(picture.faces);
  glDrawArrays(GL_TRIANGLES, 0, static_cast<GLsizei>(scene.solid->corners.size()));
  glDisable(GL_CULL_FACE);
}

void draw_edges(const Studio& s, const Picture& picture, const SolidScene& scene) {
  const GLuint program = s.edge_program;
  glUseProgram(program);
  put_matrix(program, "clip", scene.clip);
  put_colour(program, "ink", scene.ink);
  glUniform3f(glGetUniformLocation(program, "size"), static_cast<float>(scene.width), static_cast<float>(scene.height),
              scene.line);
  glBindVertexArray(picture.edges);
  glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, static_cast<GLsizei>(scene.solid->edges.size()));
}

bool draw(Studio& s, Picture& picture, const SolidScene& scene) {
  const SolidScene& before = picture.scene;
  if (scene.solid != before.solid) upload_solid(picture, *scene.solid);
  if (!make_framebuffer(s, scene.width, scene.height)) return false;
  if (scene.width != before.width || scene.height != before.height) {
    if (!make_texture(s, picture, scene.width, scene.height)) return false;
  }
  glBindFramebuffer(GL_FRAMEBUFFER, s.framebuffer);
  glViewport(0, 0, scene.width, scene.height);
  glDisable(GL_SCISSOR_TEST);
  glDisable(GL_BLEND);
  glEnable(GL_DEPTH_TEST);
  glClearColor(static_cast<float>(scene.background.red) / 255.0f, static_cast<float>(scene.background.green) / 255.0f,
               static_cast<float>(scene.background.blue) / 255.0f, 1.0f);
  glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
  draw_faces(s, picture, scene);
  draw_edges(s, picture, scene);
  glBindVertexArray(0);
  glDisable(GL_DEPTH_TEST);
  glBindFramebuffer(GL_READ_FRAMEBUFFER, s.framebuffer);
  glBindFramebuffer(GL_DRAW_FRAMEBUFFER, s.copy);
  glFramebufferTexture2D(GL_DRAW_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, picture.texture, 0);
  glBlitFramebuffer(0, 0, scene.width, scene.height, 0, 0, scene.width, scene.height, GL_COLOR_BUFFER_BIT, GL_NEAREST);
  return true;
}

void let_go(const Picture& picture) {
  glDeleteTextures(1, &picture.texture);
  glDeleteVertexArrays(1, &picture.faces);
  glDeleteVertexArrays(1, &picture.edges);
  glDeleteBuffers(2, picture.buffers);
}

/// The picture by that id, moved to the end.
Picture& seen(Studio& s, std::uint32_t id) {
  auto& all = s.pictures;
  const auto found = std::find_if(all.begin(), all.end(), [&](const Picture& p) { return p.scene.id == id; });
  if (found != all.end()) {
    std::rotate(found, found + 1, all.end());
    return all.back();
  }
  if (all.size() >= kMostKept) {
    let_go(all.front());
    all.erase(all.begin());
  }
  all.emplace_back();
  return all.back();
}

}  // namespace

std::uintptr_t draw_solid(const SolidScene& scene) {
  Studio& s = studio();
  if (s.is_refused) return 0;
  if (s.face_program == 0) {
    s.face_program = program_of(kFaceVertex, kFaceFragment);
    s.edge_program = program_of(kEdgeVertex, kEdgeFragment);
  }
  Picture& picture = seen(s, scene.id);
  if (picture.scene == scene) return picture.texture;
  s.is_refused = !draw(s, picture, scene);
  glBindFramebuffer(GL_FRAMEBUFFER, 0);
  picture.scene = scene;
  return s.is_refused ? 0 : picture.texture;
}

void forget_solids() {
  studio() = Studio();
}

}  // namespace tinwright::web
