#!/usr/bin/env bash
# Starts a worker on each machine over SSH, or ends them:
#   workers-by-ssh.sh start|stop HOST…
# A host is HOST or HOST:PORT, where its worker is to listen at that port. The program lies in the same folder on each
# machine (EVENRISE_HOME, by default 'evenrise' in the home), with the machine's own keys in 'keys/HOST' there.
set -euo pipefail

what=$1
shift
home=${EVENRISE_HOME:-evenrise}
join=$(printf '%s\n' "$@" | head -n 3 | paste -s -d , -)

for host in "$@"; do
  machine=${host%%:*}
  port=
  [ "$machine" = "$host" ] || port="--port ${host##*:}"
  case $what in
    start)
      ssh "$machine" "cd '$home' &&
        { nohup bin/evenrise worker --join '$join' --keys 'keys/$machine' $port \
            >'worker-$machine.log' 2>&1 </dev/null & } && echo \$! >'worker-$machine.pid'"
      echo "$machine: started, says what it does in $home/worker-$machine.log"
      ;;
    stop)
      ssh "$machine" "cd '$home' && kill \$(cat 'worker-$machine.pid') && rm 'worker-$machine.pid'"
      echo "$machine: stopped"
      ;;
    *)
      echo "expected start or stop, got '$what'" >&2
      exit 2
      ;;
  esac
done
