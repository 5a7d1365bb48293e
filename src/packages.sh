# Sourced by src/run.sh and tests/run.sh: installs Debian packages that are missing.
#   need PACKAGE...   asks apt only for what dpkg does not list as installed
need() {
  missing=
  for package in "$@"; do
    dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null | grep -qx installed ||
      missing="$missing $package"
  done
  [ -z "$missing" ] && return 0
  command -v apt-get >/dev/null 2>&1 || {
    echo "These packages are needed and there is no apt-get to install them:$missing" >&2
    return 1
  }
  as_root=
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null 2>&1 || {
      echo "Install these packages as root first:$missing" >&2
      return 1
    }
    as_root=sudo
  fi
  echo "Installing:$missing"
  # shellcheck disable=SC2086
  $as_root apt-get update -qq &&
    $as_root env DEBIAN_FRONTEND=noninteractive \
      apt-get install -y -qq --no-install-recommends $missing >/dev/null
}

build_packages="gcc libc6-dev pkg-config meson ninja-build libgtk-4-dev libcairo2-dev
  libpango1.0-dev libcjson-dev libgif-dev libproj-dev libglib2.0-dev-bin
  fonts-dejavu-core adwaita-icon-theme
  gettext desktop-file-utils shared-mime-info gtk-update-icon-cache"
