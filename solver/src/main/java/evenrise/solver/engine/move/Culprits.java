package evenrise.solver.engine.move;

import evenrise.solver.engine.state.IndexSet;
import evenrise.solver.engine.state.InrushProfile;
import evenrise.solver.engine.state.InstantIndex;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/** Finds loads that have a part in a broken rule: at a place known to break one, or by looking at a few at random. */
final class Culprits {
    private static final int DRAWS = 40;

    private final Situation situation;
    private final Plant plant;

    Culprits(Situation situation) {
        this.situation = situation;
        this.plant = situation.plant;
    }

    /** A load with a part in a broken rule, or {@link Plant#NONE} where none was met. */
    int draw(SplittableRandom random) {
        if (!plant.isSmall() && random.nextBoolean()) {
            int load = known(random);
            if (load != Plant.NONE) {
                return load;
            }
        }
        boolean late = situation.roles().lateness() > 0;
        for (int i = 0; i < DRAWS; i++) {
            int load = random.nextInt(plant.loadCount());
            if (sitsWrong(load)) {
                return random.nextBoolean() ? load : atPanelPeak(load, random);
            }
            if (switchesWrong(load) || (late && comesWrong(load)) || pairsWrong(load)) {
                return load;
            }
        }
        return Plant.NONE;
    }

    /** Of all places known to break a rule, each as likely: in a large project they are few, and luck would rarely meet one. */
    private int known(SplittableRandom random) {
        IndexSet panels = situation.overloadedPanels();
        IndexSet pairs = situation.pairs().broken();
        IndexSet groups = situation.groups().torn();
        IndexSet boards = situation.muddledBoards();
        int places = panels.size() + pairs.size() + groups.size() + boards.size();
        if (places == 0) {
            return Plant.NONE;
        }
        int drawn = random.nextInt(places);
        if (drawn < panels.size()) {
            return inOverloadedPanel(panels.get(drawn), random);
        }
        drawn -= panels.size();
        if (drawn < pairs.size()) {
            return ofBrokenPair(pairs.get(drawn), random);
        }
        drawn -= pairs.size();
        if (drawn < groups.size()) {
            int[] members = plant.groupMembers[groups.get(drawn)];
            return members[random.nextInt(members.length)];
        }
        return onBoard(boards.get(drawn - groups.size()), random);
    }

    private int inOverloadedPanel(int panel, SplittableRandom random) {
        int slots = plant.firstSlot[panel + 1] - plant.firstSlot[panel];
        int start = random.nextInt(slots);
        for (int i = 0; i < slots; i++) {
            int load = situation.loadInSlot(plant.firstSlot[panel] + (start + i) % slots);
            if (load != Plant.NONE) {
                return random.nextBoolean() ? load : atPanelPeak(load, random);
            }
        }
        return Plant.NONE;
    }

    /** One of two loads that break a rule between them, or a load that shares a board with one of them. */
    private int ofBrokenPair(int pair, SplittableRandom random) {
        int load = random.nextBoolean() ? plant.pairs.first[pair] : plant.pairs.second[pair];
        Output output = situation.outputOf(load);
        if (output == null || random.nextBoolean()) {
            return load;
        }
        int other = onBoard(output.board(), random);
        return other == Plant.NONE ? load : other;
    }

    private int onBoard(int board, SplittableRandom random) {
        int outputs = plant.outputCount(board);
        int start = random.nextInt(outputs);
        for (int i = 0; i < outputs; i++) {
            int load = situation.loadOnOutput(plant.firstOutput[board] + (start + i) % outputs);
            if (load != Plant.NONE) {
                return load;
            }
        }
        return Plant.NONE;
    }

    /** A load that comes on at the peak of this one's panel, where the panel has a limit to hold; else this one. */
    private int atPanelPeak(int load, SplittableRandom random) {
        Place place = situation.placeOf(load);
        InrushProfile profile = place == null ? null : situation.panelProfile(place.panel());
        if (profile == null) {
            return load;
        }
        int instant = profile.peakInstant();
        InstantIndex index = situation.byInstant();
        int count = index.count(instant);
        int start = count == 0 ? 0 : random.nextInt(count);
        for (int i = 0; i < count; i++) {
            int other = index.get(instant, (start + i) % count);
            Place seat = situation.placeOf(other);
            if (seat != null && seat.panel() == place.panel()) {
                return other;
            }
        }
        return load;
    }

    private boolean sitsWrong(int load) {
        Place place = situation.placeOf(load);
        return place == null || situation.isOverloaded(place.panel());
    }

    private boolean switchesWrong(int load) {
        Output output = situation.outputOf(load);
        if (output == null) {
            return plant.switched[load];
        }
        int group = plant.group[load];
        return situation.isInterrupted(output.board())
                || situation.groups().isMixed(output.board())
                || (group != Plant.NONE && situation.groups().isSplit(group));
    }

    private boolean comesWrong(int load) {
        int instant = situation.instantOf(load);
        return instant != Plant.NONE && situation.roles().isTooLateOrTooEarly(load, instant);
    }

    private boolean pairsWrong(int load) {
        for (int pair : plant.pairs.ofLoad[load]) {
            if (situation.pairs().chargeOf(pair) > 0) {
                return true;
            }
        }
        return false;
    }
}
