#!/bin/sh
# Puts two versions of LibreOffice Calc side by side on a Debian 12 machine: the stable one by apt, and the one from
# bookworm-backports unpacked in a folder of its own. Run as root; a second run finds everything in place.
set -eu

newer=${SOUNDFOLD_CALC_NEWER:-/opt/soundfold-calc-newer}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export DEBIAN_FRONTEND=noninteractive

if ! dpkg -s libreoffice-calc python3-uno >/dev/null 2>&1; then
  apt-get update -qq
  # The plain packages, not the -nogui ones: installing one flavour removes the other.
  apt-get install -y -qq --no-install-recommends libreoffice-calc python3-uno
fi

if [ ! -x "$newer/soffice" ]; then
  # Lists of its own, so that the machine's package sources stay as they are.
  mkdir -p "$work/lists/partial" "$work/cache/archives/partial"
  cat > "$work/sources.list" <<LIST
deb [signed-by=/usr/share/keyrings/debian-archive-keyring.gpg] http://deb.debian.org/debian bookworm main
deb [signed-by=/usr/share/keyrings/debian-archive-keyring.gpg] http://deb.debian.org/debian bookworm-backports main
LIST
  own() {
    apt-get -qq -o APT::Sandbox::User=root -o Dir::Etc::sourcelist="$work/sources.list" -o Dir::Etc::sourceparts=- \
      -o Dir::State::lists="$work/lists" -o Dir::Cache="$work/cache" -o Debug::NoLocking=1 "$@"
  }
  own update
  own install -y --download-only --no-install-recommends -t bookworm-backports libreoffice-calc python3-uno
  rm -rf "$newer.new"
  mkdir -p "$newer.new"
  for package in "$work"/cache/archives/*.deb; do dpkg -x "$package" "$newer.new"; done
  # Packages point to /etc and /var of the whole machine, where the stable version keeps its own files.
  find "$newer.new" -type l -lname '/*' | while read -r link; do
    ln -sfn "$newer$(readlink "$link")" "$link"
  done
  # What the package's own set-up step does.
  cp "$newer.new/usr/lib/libreoffice/share/.registry/main.xcd" "$newer.new/etc/libreoffice/registry/main.xcd"
  sed -i "s|file:///usr/lib/libreoffice|file://$newer/usr/lib/libreoffice|; s|file:///etc/libreoffice|file://$newer/etc/libreoffice|" \
    "$newer.new"/usr/lib/libreoffice/program/*rc
  cat > "$newer.new/soffice" <<'START'
#!/bin/sh
here=$(dirname "$(readlink -f "$0")")
export LD_LIBRARY_PATH="$here/usr/lib/libreoffice/program:$here/usr/lib/$(uname -m)-linux-gnu"
export PYTHONPATH="$here/usr/lib/python3/dist-packages${PYTHONPATH:+:$PYTHONPATH}"
exec "$here/usr/lib/libreoffice/program/soffice" "$@"
START
  chmod +x "$newer.new/soffice"
  rm -rf "$newer"
  mv "$newer.new" "$newer"
fi

soffice --version
"$newer/soffice" --version
