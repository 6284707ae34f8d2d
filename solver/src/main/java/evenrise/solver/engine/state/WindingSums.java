package evenrise.solver.engine.state;

import java.util.Arrays;

/** Currents that transformers feed and draw, kept up to date: a change goes up the tree as far as it changes anything. */
final class WindingSums {
    private final CompiledProject compiled;
    private final FeederTree tree;
    private final NodeCurrents[] nodes;
    /** By transformer's node, scene by scene, as {@link Winding} lays it out. */
    private final long[][] fed;

    private final long[][] drawn;
    private final long[] before;
    private final boolean[] isStale;
    private boolean anyStale;

    WindingSums(CompiledProject compiled, NodeCurrents[] nodes) {
        this.compiled = compiled;
        this.tree = compiled.tree;
        this.nodes = nodes;
        int size = compiled.currents.scenes * Winding.SIZE;
        fed = new long[tree.nodeCount][];
        drawn = new long[tree.nodeCount][];
        for (int transformer : tree.transformers) {
            fed[transformer] = new long[size];
            drawn[transformer] = new long[size];
        }
        before = new long[size];
        isStale = new boolean[tree.nodeCount];
    }

    /** A load below a transformer, at the voltage of its secondary. */
    void add(int transformer, int load, int phaseMask, int sign) {
        compiled.currents.addTo(fed[transformer], tree.systems[transformer], load, phaseMask, sign);
        isStale[transformer] = true;
        anyStale = true;
    }

    /** Works changes into the nodes above, and notes which those are. */
    void settle(IntBag touchedNodes) {
        if (!anyStale) {
            return;
        }
        anyStale = false;
        for (int transformer : tree.transformers) {
            if (isStale[transformer]) {
                isStale[transformer] = false;
                renew(transformer, touchedNodes);
            }
        }
    }

    private void renew(int transformer, IntBag touchedNodes) {
        long[] now = drawn[transformer];
        System.arraycopy(now, 0, before, 0, now.length);
        for (int at = 0; at < now.length; at += Winding.SIZE) {
            tree.windings[transformer].draw(fed[transformer], now, at);
        }
        if (Arrays.equals(now, before)) {
            return;
        }
        for (int node : tree.drawnAt[transformer]) {
            touchedNodes.add(node);
            for (int scene = 0; scene < compiled.currents.scenes; scene++) {
                for (int phase = 0; phase < compiled.phaseCount; phase++) {
                    int at = scene * Winding.SIZE + phase;
                    nodes[node].addDrawn(scene, phase, now[at] - before[at]);
                }
            }
        }
        int above = tree.transformerAbove[transformer];
        if (above != CompiledProject.NONE) {
            for (int i = 0; i < now.length; i++) {
                fed[above][i] += now[i] - before[i];
            }
            isStale[above] = true;
        }
    }
}
