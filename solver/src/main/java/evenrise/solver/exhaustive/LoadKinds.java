package evenrise.solver.exhaustive;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Switched loads by kind: alike, and on the same of the phases that are watched; alike in time alone, where they are on none
 * of these. In the order in which a tree of sequences looks at them: by role, and by falling excess.
 */
final class LoadKinds {
    /**
     * @param members loads of the kind
     * @param phaseSet those of their phases that are watched, as bits
     */
    record Kind(SmallLoad first, List<SmallLoad> members, int phaseSet) {}

    final List<Kind> kinds = new ArrayList<>();

    /** From when all of the first kind are on until one of the second may come on; -1 where nothing is asked. */
    final long[][] waitMicros;

    /**
     * @param phaseSets of each load of the project, as bits
     * @param watched phases, as bits
     */
    LoadKinds(SmallProject project, int[] phaseSets, int watched) {
        for (SmallLoad load : project.loads) {
            if (load.switched()) {
                int set = phaseSets[load.index()] & watched;
                Kind same = kinds.stream()
                        .filter(kind -> kind.phaseSet() == set && areAlike(kind.first(), load, set))
                        .findFirst()
                        .orElse(null);
                if (same == null) {
                    same = new Kind(load, new ArrayList<>(), set);
                    kinds.add(same);
                }
                same.members().add(load);
            }
        }
        Comparator<Kind> byRole = Comparator.comparing(
                kind -> project.tellsRolesApart ? kind.first().load().role().ordinal() : 0);
        kinds.sort(byRole.thenComparing(kind -> -kind.first().excessAmps()));
        waitMicros = new long[kinds.size()][kinds.size()];
        for (int one = 0; one < kinds.size(); one++) {
            for (int other = 0; other < kinds.size(); other++) {
                waitMicros[one][other] = one == other
                        ? -1
                        : project.waitMicros(
                                kinds.get(one).first(), kinds.get(other).first());
            }
        }
    }

    private static boolean areAlike(SmallLoad one, SmallLoad other, int set) {
        return set == 0 ? one.alikeInTime() == other.alikeInTime() : one.alike() == other.alike();
    }
}
