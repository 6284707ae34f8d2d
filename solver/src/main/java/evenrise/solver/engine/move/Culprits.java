package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.IndexSet;
import evenrise.solver.engine.state.InstantIndex;
import evenrise.solver.engine.state.NodeInrush;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/** Finds loads that have a part in a broken rule: at a place known to break one, or by looking at a few at random. */
final class Culprits {
    private static final int DRAWS = 40;

    private final PlanSums sums;
    private final CompiledProject compiled;

    Culprits(PlanSums sums) {
        this.sums = sums;
        this.compiled = sums.compiled;
    }

    /** A load with a part in a broken rule, or {@link CompiledProject#NONE} where none was met. */
    int draw(SplittableRandom random) {
        if (!compiled.isSmall() && random.nextBoolean()) {
            int load = known(random);
            if (load != CompiledProject.NONE) {
                return load;
            }
        }
        boolean late = sums.roles().lateness() > 0;
        for (int i = 0; i < DRAWS; i++) {
            int load = random.nextInt(compiled.loadCount());
            if (sitsWrong(load)) {
                return random.nextBoolean() ? load : atPanelPeak(load, random);
            }
            if (switchesWrong(load) || (late && comesWrong(load)) || pairsWrong(load) || sums.isOffFixedTime(load)) {
                return load;
            }
        }
        return CompiledProject.NONE;
    }

    /** Of all places known to break a rule, each as likely: in a large project they are few, and luck would rarely meet one. */
    private int known(SplittableRandom random) {
        IndexSet nodes = sums.overloadedNodes();
        IndexSet shorts = sums.shortPanels();
        IndexSet muddled = sums.systems().muddled();
        IndexSet pairs = sums.pairs().broken();
        IndexSet groups = sums.groups().torn();
        IndexSet boards = sums.muddledBoards();
        int places = nodes.size() + pairs.size() + groups.size() + boards.size() + shorts.size() + muddled.size();
        if (places == 0) {
            return CompiledProject.NONE;
        }
        int drawn = random.nextInt(places);
        if (drawn < nodes.size()) {
            return inOverloadedPanel(panelBelow(nodes.get(drawn), random), random);
        }
        drawn -= nodes.size();
        if (drawn < pairs.size()) {
            return ofBrokenPair(pairs.get(drawn), random);
        }
        drawn -= pairs.size();
        if (drawn < groups.size()) {
            int[] members = compiled.groupMembers[groups.get(drawn)];
            return members[random.nextInt(members.length)];
        }
        drawn -= groups.size();
        if (drawn < boards.size()) {
            return onBoard(boards.get(drawn), random);
        }
        drawn -= boards.size();
        return drawn < shorts.size()
                ? inOverloadedPanel(shorts.get(drawn), random)
                : onBoard(muddled.get(drawn - shorts.size()), random);
    }

    private int panelBelow(int node, SplittableRandom random) {
        int[] panels = compiled.tree.panelsBelow[node];
        return panels.length == 1 ? panels[0] : panels[random.nextInt(panels.length)];
    }

    private int inOverloadedPanel(int panel, SplittableRandom random) {
        int slots = compiled.firstSlot[panel + 1] - compiled.firstSlot[panel];
        int start = random.nextInt(slots);
        for (int i = 0; i < slots; i++) {
            int load = sums.loadInSlot(compiled.firstSlot[panel] + (start + i) % slots);
            if (load != CompiledProject.NONE) {
                return random.nextBoolean() ? load : atPanelPeak(load, random);
            }
        }
        return CompiledProject.NONE;
    }

    /** One of two loads that break a rule between them, or a load that shares a board with one of them. */
    private int ofBrokenPair(int pair, SplittableRandom random) {
        int load = random.nextBoolean() ? compiled.pairs.first[pair] : compiled.pairs.second[pair];
        Output output = sums.outputOf(load);
        if (output == null || random.nextBoolean()) {
            return load;
        }
        int other = onBoard(output.board(), random);
        return other == CompiledProject.NONE ? load : other;
    }

    private int onBoard(int board, SplittableRandom random) {
        int outputs = compiled.outputCount(board);
        int start = random.nextInt(outputs);
        for (int i = 0; i < outputs; i++) {
            int load = sums.loadOnOutput(compiled.firstOutput[board] + (start + i) % outputs);
            if (load != CompiledProject.NONE) {
                return load;
            }
        }
        return CompiledProject.NONE;
    }

    /** A load that comes on at the peak of this one's panel, where the panel has a limit to hold; else this one. */
    private int atPanelPeak(int load, SplittableRandom random) {
        Place place = sums.placeOf(load);
        NodeInrush profile = place == null ? null : sums.inrush(place.panel() + 1);
        if (profile == null) {
            return load;
        }
        int instant = profile.peakInstant();
        InstantIndex index = profile.index(profile.peakClock());
        int count = index.count(instant);
        int start = count == 0 ? 0 : random.nextInt(count);
        for (int i = 0; i < count; i++) {
            int other = index.get(instant, (start + i) % count);
            Place seat = sums.placeOf(other);
            if (seat != null && seat.panel() == place.panel()) {
                return other;
            }
        }
        return load;
    }

    private boolean sitsWrong(int load) {
        Place place = sums.placeOf(load);
        return place == null || sums.isOverloaded(place.panel());
    }

    private boolean switchesWrong(int load) {
        Output output = sums.outputOf(load);
        if (output == null) {
            return compiled.needsOutput[load];
        }
        int group = compiled.group[load];
        return sums.isInterrupted(output.board())
                || sums.groups().isMixed(output.board())
                || (group != CompiledProject.NONE && sums.groups().isSplit(group));
    }

    private boolean comesWrong(int load) {
        int instant = sums.instantOf(load);
        return instant != CompiledProject.NONE && sums.roles().isTooLateOrTooEarly(load, instant);
    }

    private boolean pairsWrong(int load) {
        for (int pair : compiled.pairs.ofLoad[load]) {
            if (sums.pairs().chargeOf(pair) > 0) {
                return true;
            }
        }
        return false;
    }
}
