package evenrise.solver.sample;

import evenrise.model.project.BoardTiming;
import evenrise.model.project.BoardType;
import evenrise.model.project.EmergencyBy;
import evenrise.model.project.GroupSeating;
import evenrise.model.project.OffTiming;
import evenrise.model.project.OfferedTimes;
import evenrise.model.project.PassesOn;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The board types of drawn venues, called by letters, and which of them a panel has. */
final class BoardKinds {
    private static final List<Double> DELAYS = List.of(
            0.0, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 11.0, 12.0, 12.5, 13.0, 13.5, 14.0, 15.0, 16.0,
            18.0, 20.0, 22.0, 24.0, 26.0, 28.0, 30.0, 33.0, 36.0);
    private static final List<Double> STEPS = List.of(0.25, 0.5, 1.0, 2.0);

    private static final BoardType F = stepped("F", 6, 330);
    private static final BoardType H = stepped("H", 10, 480);
    private static final BoardType Q = stepped("Q", 18, 790);

    /** Passes on after its last output, used or not. */
    private static final BoardType N = BoardType.builder()
            .id("N")
            .outputs(11)
            .startDelaySeconds(List.of(0.0, 0.5, 1.0, 1.5, 3.0, 6.0, 9.0, 12.0, 18.0, 24.0))
            .stepSeconds(List.of(0.4, 0.8, 1.2, 2.0, 2.8))
            .passesOn(PassesOn.ALL)
            .price(505)
            .build();

    /** Its outputs go off at times of their own. */
    private static final BoardType J = BoardType.builder()
            .id("J")
            .outputs(10)
            .startDelaySeconds(DELAYS)
            .stepSeconds(List.of(0.3, 0.6, 1.0, 2.0))
            .off(OffTiming.EACH)
            .price(560)
            .build();

    /** Two of its outputs stay free. */
    private static final BoardType S = BoardType.builder()
            .id("S")
            .outputs(12)
            .startDelaySeconds(DELAYS)
            .stepSeconds(STEPS)
            .spareOutputs(2)
            .price(590)
            .build();

    /** Each output has a time of its own, and drops on an emergency or not. */
    private static final BoardType V = BoardType.builder()
            .id("V")
            .outputs(13)
            .timing(BoardTiming.EACH)
            .timesSeconds(Optional.of(times(60, 0.5)))
            .emergencyBy(EmergencyBy.OUTPUT)
            .price(820)
            .build();

    /** As V, finer, and groups sit on it anyhow. */
    private static final BoardType Z = BoardType.builder()
            .id("Z")
            .outputs(21)
            .timing(BoardTiming.EACH)
            .timesSeconds(Optional.of(times(120, 0.1)))
            .emergencyBy(EmergencyBy.OUTPUT)
            .groups(GroupSeating.ANY)
            .off(OffTiming.EACH)
            .price(1240)
            .build();

    /** A group of more loads than this needs several boards of the kind that takes groups whole. */
    static final int LARGEST_OUTPUTS = Q.outputs();

    private static final int EVERY = 3;

    private final VenuePlant plant;

    BoardKinds(VenuePlant plant) {
        this.plant = plant;
    }

    private static BoardType stepped(String id, int outputs, double price) {
        return BoardType.builder()
                .id(id)
                .outputs(outputs)
                .startDelaySeconds(DELAYS)
                .stepSeconds(STEPS)
                .price(price)
                .build();
    }

    private static OfferedTimes times(double to, double by) {
        return new OfferedTimes(OptionalDouble.of(0), OptionalDouble.of(to), OptionalDouble.of(by), List.of());
    }

    List<BoardType> all() {
        List<BoardType> all = new ArrayList<>(List.of(F, H, Q));
        if (plant.has(PlantOption.BOARDS)) {
            all.addAll(List.of(N, V, Z));
        }
        if (plant.has(PlantOption.OFF_DELAYS)) {
            all.add(J);
        }
        if (plant.has(PlantOption.SPARE)) {
            all.add(S);
        }
        return all;
    }

    /** For processing and what holds, ten outputs. */
    BoardType hold(int panel) {
        if (plant.has(PlantOption.BOARDS) && panel % EVERY == 1) {
            return N;
        }
        if (plant.has(PlantOption.OFF_DELAYS) && panel % EVERY == 0) {
            return J;
        }
        return plant.has(PlantOption.SPARE) ? S : H;
    }

    /** For what drops. */
    BoardType drop(int panel, int outputs) {
        if (plant.has(PlantOption.BOARDS) && panel % EVERY == 2) {
            return outputs > V.outputs() ? Z : V;
        }
        return outputs > H.outputs() ? Q : H;
    }

    /** For call amplifiers. */
    BoardType call(int outputs) {
        return outputs > F.outputs() ? H : F;
    }
}
