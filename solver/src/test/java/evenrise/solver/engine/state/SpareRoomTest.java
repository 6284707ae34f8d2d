package evenrise.solver.engine.state;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.PanelBuilder;
import evenrise.model.project.Spare;
import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** A panel of 12 slots, odd ones left and even ones right, of which slot 12 is reserved and 1 to 6 take switched breakers. */
class SpareRoomTest {
    private int[] loadInSlot;

    private static PanelBuilder panel(Spare spare) {
        return aPanel("P1")
                .slots(12)
                .reservedSlots(12)
                .switchedSlots(1, 2, 3, 4, 5, 6)
                .with(it -> it.spare(Optional.of(spare)));
    }

    private SpareRoom room(PanelBuilder panel, int... taken) {
        CompiledProject compiled =
                new CompiledProject(aProject().panels(panel).loads(aLoad("L")).build());
        loadInSlot = new int[compiled.slotCount()];
        Arrays.fill(loadInSlot, CompiledProject.NONE);
        SpareRoom room = new SpareRoom(compiled, loadInSlot);
        for (int slot : taken) {
            loadInSlot[slot - 1] = 0;
        }
        room.touch(0);
        room.settle();
        return room;
    }

    private long places(Spare spare, int... taken) {
        return room(panel(spare), taken).charge() / Charges.PLACE;
    }

    private static Spare slots(int count) {
        return Spare.builder().slots(count).build();
    }

    private static Spare fits(int count, int poles) {
        return Spare.builder().fits(count).poles(poles).build();
    }

    /** 12 less the reserved one and three taken are 8. */
    @Test
    void chargesEachSlotThatIsMissing() {
        assertThat(places(slots(8), 1, 2, 3)).isZero();
        assertThat(places(slots(9), 1, 2, 3)).isEqualTo(1);
        assertThat(places(slots(11), 1, 2, 3)).isEqualTo(3);
    }

    /** Of six for switched breakers three are left. */
    @Test
    void chargesEachSlotForASwitchedBreakerThatIsMissing() {
        assertThat(places(Spare.builder().switchedSlots(3).build(), 1, 2, 3, 8)).isZero();
        assertThat(places(Spare.builder().switchedSlots(5).build(), 1, 2, 3, 8)).isEqualTo(2);
    }

    /** Left side whole: 1, 3, 5 and 7, 9, 11; right side 2, 4, 6 and, since 12 is reserved, no more. */
    @Test
    void countsFurtherBreakersOnBothSides() {
        assertThat(places(fits(3, 3))).isZero();
        assertThat(places(fits(4, 3))).isEqualTo(1);
    }

    /** With 3 taken the left side has 1 alone and 5, 7, 9, 11: two of two poles; with 6 the right side 2, 4 and 8, 10. */
    @Test
    void countsWhatFitsAtOnce() {
        assertThat(places(fits(4, 2), 3, 6)).isZero();
        assertThat(places(fits(5, 2), 3, 6)).isEqualTo(1);
    }

    /** On two legs, A, B, A, B …: three poles touch a phase twice wherever they sit. */
    @Test
    void findsNoRoomForBreakersThatWouldTouchAPhaseTwice() {
        PanelBuilder onTwoLegs =
                panel(fits(1, 3)).phaseRotation(evenrise.model.project.Phase.A, evenrise.model.project.Phase.B);

        assertThat(room(onTwoLegs).charge()).isEqualTo(Charges.PLACE);
    }

    @Test
    void sumsWhatIsMissingOfEachKind() {
        Spare all = Spare.builder().slots(12).switchedSlots(7).fits(4).poles(3).build();

        assertThat(places(all)).isEqualTo(1 + 1 + 1);
    }

    @Test
    void knowsPanelsThatAreShort() {
        SpareRoom room = room(panel(slots(9)), 1, 2, 3);
        assertThat(room.isShort(0)).isTrue();
        assertThat(room.shortPanels().size()).isEqualTo(1);

        loadInSlot[1] = CompiledProject.NONE;
        room.touch(0);
        room.settle();

        assertThat(room.isShort(0)).isFalse();
        assertThat(room.charge()).isZero();
    }

    @Nested
    class Fitting {
        /** Beginning with the lowest slot is as good as the best of all choices. */
        @Test
        void isTheMostThatAnyChoiceGives() {
            SplittableRandom random = new SplittableRandom(3);
            for (int trial = 0; trial < 300; trial++) {
                boolean[] taken = new boolean[13];
                for (int slot = 1; slot <= 12; slot++) {
                    taken[slot] = slot == 12 || random.nextInt(3) == 0;
                }
                int poles = 1 + random.nextInt(3);
                int[] slots = java.util.stream.IntStream.rangeClosed(1, 12)
                        .filter(slot -> taken[slot])
                        .toArray();

                long missing = room(panel(fits(20, poles)), slots).charge() / Charges.PLACE;

                assertThat(20 - missing)
                        .as("%s, %d poles", Arrays.toString(slots), poles)
                        .isEqualTo(most(taken, 1, poles));
            }
        }

        /** With or without a breaker that begins in this slot. */
        private int most(boolean[] taken, int slot, int poles) {
            if (slot > 12) {
                return 0;
            }
            int without = most(taken, slot + 1, poles);
            boolean fits = slot + 2 * (poles - 1) <= 12;
            for (int pole = 0; fits && pole < poles; pole++) {
                fits = !taken[slot + 2 * pole];
            }
            if (!fits) {
                return without;
            }
            boolean[] with = taken.clone();
            for (int pole = 0; pole < poles; pole++) {
                with[slot + 2 * pole] = true;
            }
            return Math.max(without, 1 + most(with, slot + 1, poles));
        }
    }
}
