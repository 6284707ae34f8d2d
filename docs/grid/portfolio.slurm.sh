#!/usr/bin/env bash
#SBATCH --job-name=evenrise
#SBATCH --nodes=8
#SBATCH --ntasks-per-node=1
#SBATCH --cpus-per-task=32
#SBATCH --time=08:00:00
# A worker on each node, and the command beside them on the first:
#   sbatch portfolio.slurm.sh portfolio halls -o overnight --seeds 1..50
# Any command that takes --grid may stand there. Submitted again, it goes on where it ended.
set -euo pipefail

keys=${EVENRISE_KEYS:-keys/cluster}
hosts=$(scontrol show hostnames "$SLURM_JOB_NODELIST" | head -n 3 | paste -s -d , -)

srun evenrise worker --join "$hosts" --keys "$keys" --slots "${SLURM_CPUS_PER_TASK:-1}" &
workers=$!
trap 'kill "$workers" 2>/dev/null || true; wait "$workers" 2>/dev/null || true' EXIT

# 7 says that no worker answers: they may still be starting.
code=7
for try in 1 2 3 4 5 6; do
  [ "$code" = 7 ] || break
  code=0
  evenrise "$@" --grid "$hosts" --keys "$keys" || code=$?
done
exit "$code"
