package evenrise.solver.bench;

import java.util.Arrays;
import java.util.stream.Collectors;

/** A way to plan a project. */
enum Peer {
    ENGINE("engine", "this engine, the search alone"),
    CP_SAT("cp-sat", "OR-Tools CP-SAT on the whole contract, cold"),
    CP_SAT_WARM("cp-sat-warm", "the same, begun at what the engine finds in 20,000 moves of one thread"),
    ANNEALING("annealing", "plain annealing, moves inside a panel, from the engine's first plan"),
    LATE_ACCEPTANCE(
            "late-acceptance",
            "OptaPlanner's own late acceptance, change, swap and pillar moves, from the same first plan"),
    TEMPERING(
            "tempering",
            "parallel tempering of JAMES, a library for local search, moves in and across panels, from the same first plan"),
    LIST_ORDER("list", "loads in the file's order to the first place that fits, boards one after another");

    private final String word;
    private final String meaning;

    Peer(String word, String meaning) {
        this.word = word;
        this.meaning = meaning;
    }

    String meaning() {
        return meaning;
    }

    /** Whether chance has a part in what it finds. */
    boolean isSeeded() {
        return this != LIST_ORDER;
    }

    static Peer of(String word) {
        return Arrays.stream(values())
                .filter(peer -> peer.word.equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("method " + word + ", expected one of "
                        + Arrays.stream(values()).map(Peer::toString).collect(Collectors.joining(", "))));
    }

    @Override
    public String toString() {
        return word;
    }
}
