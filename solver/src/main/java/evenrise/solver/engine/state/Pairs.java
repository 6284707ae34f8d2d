package evenrise.solver.engine.state;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Rules between two loads, as an edge list with an index by load. */
public final class Pairs {
    public static final byte APART = 0;
    public static final byte SAME_PHASE = 1;
    /** The second load comes after the first has settled. */
    public static final byte ORDER = 2;
    /** The second load is behind the contactor of the first. */
    public static final byte WITH = 3;

    public final byte[] kind;
    public final int[] first;
    public final int[] second;
    public final int[][] ofLoad;

    Pairs(Project project) {
        Map<String, Integer> index = new HashMap<>();
        project.loads().forEach(load -> index.put(load.id(), index.size()));
        List<int[]> edges = new ArrayList<>();
        for (Load load : project.loads()) {
            int self = index.get(load.id());
            load.apartFrom().forEach(id -> edges.add(new int[] {APART, self, index.get(id)}));
            load.samePhaseAs().forEach(id -> edges.add(new int[] {SAME_PHASE, self, index.get(id)}));
            load.comesAfter().forEach(id -> edges.add(new int[] {ORDER, index.get(id), self}));
            load.comesWith().ifPresent(id -> edges.add(new int[] {WITH, index.get(id), self}));
        }
        kind = new byte[edges.size()];
        first = new int[edges.size()];
        second = new int[edges.size()];
        List<List<Integer>> lists = new ArrayList<>();
        project.loads().forEach(load -> lists.add(new ArrayList<>()));
        for (int pair = 0; pair < edges.size(); pair++) {
            kind[pair] = (byte) edges.get(pair)[0];
            first[pair] = edges.get(pair)[1];
            second[pair] = edges.get(pair)[2];
            lists.get(first[pair]).add(pair);
            lists.get(second[pair]).add(pair);
        }
        int[] none = {};
        ofLoad = lists.stream()
                .map(list -> list.isEmpty()
                        ? none
                        : list.stream().mapToInt(Integer::intValue).toArray())
                .toArray(int[][]::new);
    }
}
