#include <cstdio>

int main() {
  std::puts("backmark 0.1.0");
  return 0;
}
