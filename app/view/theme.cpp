// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Warm paper by day, dark wood by night; one green-blue accent. The glyph ranges match web/fonts.py.
#include "app/view/theme.h"

#include <algorithm>
#include <cmath>

#include "imgui.h"

namespace tinwright::view {
namespace {

constexpr Colour hex(std::uint32_t rgb) {
  return {static_cast<std::uint8_t>(rgb >> 16), static_cast<std::uint8_t>((rgb >> 8) & 0xff),
          static_cast<std::uint8_t>(rgb & 0xff)};
}

constexpr Palette kDay{
    .page = hex(0xF5EEE1),
    .card = hex(0xFFFCF6),
    .well = hex(0xFFFFFF),
    .line = hex(0x8A7A6A),
    .rule = hex(0xE2D6C3),
    .ink = hex(0x2A221D),
    .soft_ink = hex(0x64564A),
    .accent = hex(0x1F655E),
    .accent_over = hex(0x174E49),
    .on_accent = hex(0xFFFFFF),
    .tint = hex(0xE6F0EA),
    .caution = hex(0x7A4E00),
    .caution_tint = hex(0xFBEFD2),
    .error = hex(0x9B2226),
    .error_tint = hex(0xFBE6E1),
    .disabled_ink = hex(0x8C8175),
};

constexpr Palette kNight{
    .page = hex(0x1B1714),
    .card = hex(0x26211D),
    .well = hex(0x1A1613),
    .line = hex(0x8F8072),
    .rule = hex(0x3D352E),
    .ink = hex(0xF3EADD),
    .soft_ink = hex(0xC4B6A6),
    .accent = hex(0x7CC7BA),
    .accent_over = hex(0x9AD8CD),
    .on_accent = hex(0x10211E),
    .tint = hex(0x1F302C),
    .caution = hex(0xEBBF62),
    .caution_tint = hex(0x352A14),
    .error = hex(0xF39A8F),
    .error_tint = hex(0x3A1F1C),
    .disabled_ink = hex(0x8E8376),
};

/// sRGB channel to linear light, WCAG 2.2.
double linear(std::uint8_t channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(Colour c) {
  return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue);
}

constexpr float kFinePixels = 30.0f;  // [device px] height of body text from which single pixels no longer show

constexpr ImWchar kLetters[] = {0x20,   0x17f,  0x2010, 0x2044, 0x2150, 0x215f, 0x2190, 0x2193, 0x2212,
                                0x2212, 0x2248, 0x2248, 0x2264, 0x2265, 0x2713, 0x2713, 0};

void* bytes(std::span<const std::byte> file) {
  return const_cast<std::byte*>(file.data());
}

}  // namespace

std::uint32_t packed(Colour colour, float opacity) {
  const auto alpha = static_cast<std::uint32_t>(std::lround(std::clamp(opacity, 0.0f, 1.0f) * 255.0f));
  return IM_COL32(colour.red, colour.green, colour.blue, alpha);
}

double contrast_ratio(Colour a, Colour b) {
  const auto [dark, light] = std::minmax({luminance(a), luminance(b)});
  return (light + 0.05) / (dark + 0.05);
}

const Palette& day_palette() {
  return kDay;
}
const Palette& night_palette() {
  return kNight;
}

Faces bake_faces(const FontFiles& files, float em) {
  ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
  atlas.Clear();
  atlas.TexDesiredWidth = em >= kFinePixels ? 4096 : 2048;
  const float shrunk = std::min(1.0f, kMostBaked / em);
  const auto bake = [&](std::span<const std::byte> file, float size_em) {
    const float wanted = std::round(em * size_em);
    ImFontConfig config;
    config.SizePixels = std::round(wanted * shrunk);
    config.FontDataOwnedByAtlas = false;
    // Few pixels: place letters between them, so that words keep their width. Many: whole ones, so that edges stay
    // sharp.
    const bool fine = em >= kFinePixels;
    config.OversampleH = fine ? 1 : 3;
    config.OversampleV = 1;
    config.PixelSnapH = fine;
    if (file.empty()) return Face{atlas.AddFontDefault(&config), wanted};
    ImFont* font =
        atlas.AddFontFromMemoryTTF(bytes(file), static_cast<int>(file.size()), config.SizePixels, &config, kLetters);
    config.MergeMode = true;
    atlas.AddFontFromMemoryTTF(bytes(files.signs), static_cast<int>(files.signs.size()), config.SizePixels, &config,
                               kLetters);
    return Face{font, wanted};
  };
  Faces faces;
  faces.body = bake(files.regular, 1.0f);
  faces.small = bake(files.regular, kSmallText);
  faces.strong = bake(files.strong, 1.0f);
  faces.head = bake(files.strong, kHeadText);
  faces.big = bake(files.strong, kBigText);
  atlas.Build();
  return faces;
}

}  // namespace tinwright::view
