// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Values as bytes and back, between two programs of the same build: no format to keep. A type takes part by a function
//     template <class Bytes> void exchange(Bytes& bytes, Type& value) { bytes(value.one, value.other); }
// beside it, which does both ways.
#pragma once

#include <cstddef>
#include <cstring>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

namespace tinwright {

template <class T>
inline constexpr bool kIsPlain = std::is_arithmetic_v<T> || std::is_enum_v<T>;

class ByteWriter {
 public:
  template <class... Values>
  void operator()(Values&... values) {
    (put(values), ...);
  }
  std::string take() { return std::move(bytes_); }

 private:
  template <class T>
  void put(T& value) {
    if constexpr (kIsPlain<T>) {
      raw(&value, sizeof value);
    } else {
      exchange(*this, value);
    }
  }
  void put(std::string& text) { block(text.data(), text.size(), 1); }
  template <class T>
  void put(std::vector<T>& values) {
    if constexpr (kIsPlain<T>) {
      block(values.data(), values.size(), sizeof(T));
    } else {
      block(nullptr, values.size(), 0);
      for (T& value : values) put(value);
    }
  }
  void put(std::map<std::string, std::string>& texts) {
    block(nullptr, texts.size(), 0);
    for (const auto& [name, text] : texts) {
      block(name.data(), name.size(), 1);
      block(text.data(), text.size(), 1);
    }
  }

  void raw(const void* from, std::size_t size) { bytes_.append(static_cast<const char*>(from), size); }
  /// Their number, then the bytes of all.
  void block(const void* from, std::size_t count, std::size_t size) {
    raw(&count, sizeof count);
    if (count * size > 0) raw(from, count * size);
  }

  std::string bytes_;
};

/// Bytes that end too soon leave what is missing empty, and failed() says so.
class ByteReader {
 public:
  explicit ByteReader(std::string_view bytes) : left_(bytes) {}
  template <class... Values>
  void operator()(Values&... values) {
    (get(values), ...);
  }
  /// Whether bytes were missing; some left over count as well.
  bool failed() const { return has_failed_ || !left_.empty(); }

 private:
  template <class T>
  void get(T& value) {
    if constexpr (kIsPlain<T>) {
      raw(&value, sizeof value);
    } else {
      exchange(*this, value);
    }
  }
  void get(std::string& text) {
    text.resize(count_of(1));
    raw(text.data(), text.size());
  }
  template <class T>
  void get(std::vector<T>& values) {
    values.resize(count_of(kIsPlain<T> ? sizeof(T) : 1));
    if constexpr (kIsPlain<T>) {
      raw(values.data(), values.size() * sizeof(T));
    } else {
      for (T& value : values) get(value);
    }
  }
  void get(std::map<std::string, std::string>& texts) {
    texts.clear();
    for (std::size_t left = count_of(2); left > 0; --left) {
      std::string name;
      get(name);
      get(texts[name]);
    }
  }

  void raw(void* to, std::size_t size) {
    if (size > left_.size()) {
      has_failed_ = true;
      left_ = {};
      return;
    }
    if (size > 0) std::memcpy(to, left_.data(), size);
    left_.remove_prefix(size);
  }
  /// A number of items of at least `least` bytes each; none where they cannot all be there.
  std::size_t count_of(std::size_t least) {
    std::size_t count = 0;
    raw(&count, sizeof count);
    if (count <= left_.size() / least) return count;
    has_failed_ = true;
    left_ = {};
    return 0;
  }

  std::string_view left_;
  bool has_failed_ = false;
};

/// `value` as bytes; it is not changed.
template <class T>
std::string packed(T value) {
  ByteWriter bytes;
  bytes(value);
  return bytes.take();
}

/// Nothing where these are not the bytes of a T.
template <class T>
std::optional<T> unpacked(std::string_view bytes) {
  ByteReader reader(bytes);
  T value{};
  reader(value);
  if (reader.failed()) return std::nullopt;
  return value;
}

}  // namespace tinwright
