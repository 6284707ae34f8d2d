package evenrise.solver.exact;

import static evenrise.model.Fixtures.NOBODY;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.solver.bounds.Flashes.flash;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ARandomProject;
import evenrise.model.LoadBuilder;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Bounds;
import evenrise.model.project.Load;
import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.solver.bounds.Flashes;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.VenueSize;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class LadderProverTest {
    private static final int PROJECTS = Integer.getInteger("evenrise.ladders", 60);
    private static final int PLANTED = Integer.getInteger("evenrise.planted", 300);

    private static Project project(LoadBuilder... loads) {
        return Flashes.project(aSupply(), loads);
    }

    private static double amps(Project project) {
        return new LadderProver(project, 0, false).amps(() -> false);
    }

    @Nested
    class ByHand {
        /** The amplifier's phase has to be free of all else; then the other two phases bear 30 each. */
        @Test
        void whatIsOnBeforeMakesRoomForTheGreatOne() {
            Project project = project(
                    flash("one", 1, 10, 30, 0).processing(),
                    flash("other", 1, 10, 30, 0).processing(),
                    flash("great", 1, 10, 0, 100).amplifier());

            assertThat(amps(project)).isCloseTo(100, within(1e-3));
        }

        /**
         * The same, where what is on before draws in use what the amplifier does not: put aside for it, it unbalances the phases.
         * Of three processors of 20 in use and an amplifier of 5, one each on two phases and one with the amplifier is off the
         * mean of 65/3 by 10/3; charged 2 an ampere (by the supply and by the panel) that is 6.67, and the peak is 130.
         */
        @Test
        void puttingItAsideCostsBalance() {
            Project project = project(
                    flash("one", 1, 20, 30, 0).processing(),
                    flash("other", 1, 20, 30, 0).processing(),
                    flash("third", 1, 20, 30, 0).processing(),
                    flash("great", 1, 5, 0, 100).amplifier());

            double whole = EveryWay.least(project);

            assertThat(whole).isCloseTo(130 + 20 / 3.0, within(1e-6));
            assertThat(amps(project)).isGreaterThan(101).isLessThanOrEqualTo(whole + 1e-6);
        }
    }

    @Test
    void staysBelowEveryWayToSitAndEveryOrderOfSwitching() {
        int sharp = 0;
        for (int seed = 1; seed <= PROJECTS; seed++) {
            Project project = random(new Random(seed));

            double proven = amps(project);
            double least = EveryWay.least(project);

            assertThat(proven).as("seed %d", seed).isLessThanOrEqualTo(least + 1e-6);
            sharp += proven > least * 0.8 ? 1 : 0;
        }
        assertThat(sharp).isGreaterThan(PROJECTS / 2);
    }

    @Test
    void whateverTheMultipliersTheyProveNothingThatIsNotSo() {
        for (int seed = 1; seed <= PROJECTS; seed++) {
            Random random = new Random(seed);
            Project project = random(random);
            LadderPanels panels = new LadderPanels(project, false);
            LadderLoads loads = new LadderLoads(project, panels, true);
            double[][] climb = new double[loads.phases][loads.climbers];
            for (double[] row : climb) {
                Arrays.setAll(row, rank -> 0.6 * random.nextDouble() - 0.1);
            }
            double[][] over = {random.doubles(3, -0.5, 1.5).toArray()};
            double[][] under = {random.doubles(3, -0.5, 1.5).toArray()};

            double proven = new LadderMultipliers(climb, over, under)
                    .bound(loads, panels.balances, LadderBox.whole(loads.phases, loads.climbers), 1, 0);

            assertThat(proven).as("seed %d", seed).isLessThanOrEqualTo(EveryWay.least(project) + 1e-6);
        }
    }

    /** A planted plan keeps every rule, so more than its objective would be no bound. */
    @Test
    void isNeverAboveAPlanThatKeepsEveryRule() {
        int proven = 0;
        for (long seed = 0; seed < PLANTED; seed++) {
            ARandomProject.Planted planted = ARandomProject.planted(seed);
            Project project = planted.project();
            if (PlantPart.of(project).isEmpty() && LadderProver.suits(project)) {
                Bounds bounds = ProvenBounds.of(project);
                double amps = new LadderProver(project, bounds.peakInrushAmps(), seed % 2 == 0).amps(() -> false);

                assertThat(ProvenBounds.objective(project, bounds, amps))
                        .as("seed %d", seed)
                        .isLessThanOrEqualTo(objective(planted, bounds) + 1e-6);
                proven += ProvenBounds.objective(project, bounds, amps) > bounds.objective() ? 1 : 0;
            }
        }
        assertThat(proven).as("projects of which it proves more").isGreaterThan(PLANTED / 20);
    }

    private static double objective(ARandomProject.Planted planted, Bounds bounds) {
        Project project = planted.project();
        return Referee.judge(project, PlanFinisher.finish(project, planted.plan(), NOBODY, bounds))
                .metrics()
                .objective();
    }

    /** Panels are told apart here, each charged for its own balance. */
    @Test
    void noMultipliersProveMoreThanAPlanThatKeepsEveryRuleCosts() {
        int several = 0;
        for (long seed = 0; seed < PLANTED; seed++) {
            ARandomProject.Planted planted = ARandomProject.planted(seed);
            Project project = planted.project();
            LadderPanels panels = new LadderPanels(project, true);
            LadderLoads loads = new LadderLoads(project, panels, ProvenBounds.tellsRolesApart(project));
            if (PlantPart.of(project).isEmpty() && loads.climbers > 0 && loads.phases > 1) {
                Random random = new Random(seed);
                double[][] climb = new double[loads.phases][loads.climbers];
                double[][] over = new double[panels.balances.size()][loads.phases];
                double[][] under = new double[panels.balances.size()][loads.phases];
                for (double[][] all : List.of(climb, over, under)) {
                    for (double[] row : all) {
                        Arrays.setAll(row, any -> random.nextDouble() - 0.3);
                    }
                }
                double proven = new LadderMultipliers(climb, over, under)
                        .bound(
                                loads,
                                panels.balances,
                                LadderBox.whole(loads.phases, loads.climbers),
                                project.objective().peakInrush(),
                                0);
                Bounds bounds = ProvenBounds.of(project);

                assertThat(ProvenBounds.objective(project, bounds, proven))
                        .as("seed %d", seed)
                        .isLessThanOrEqualTo(objective(planted, bounds) + 1e-6);
                several += project.panels().size() > 1 ? 1 : 0;
            }
        }
        assertThat(several).isGreaterThan(PLANTED / 10);
    }

    /** There amplifiers are in other panels than what is on before; what one panel lacks on a phase no other makes up for. */
    @Nested
    class OfAHallWhoseAmplifiersHavePanelsOfTheirOwn {
        private final Project hall = ProjectFile.read(Path.of("..", "datasets", "meridian-hall", "project.json"))
                .value()
                .orElseThrow();

        /** Its settings make more instants than bounds look at, but differ by a twentieth of a second. */
        @Test
        void rolesAreToldApart() {
            assertThat(ProvenBounds.tellsRolesApart(hall)).isTrue();
        }

        @Test
        void panelsThatAreToldApartAreChargedForTheirOwnBalance() {
            double together = new LadderProver(hall, 0, false).amps(() -> false);

            assertThat(new LadderProver(hall, 0, true).amps(() -> false)).isGreaterThan(1.01 * together);
        }

        /** All poles of a load are somewhere, and the amplifiers of two poles with the greatest inrush on the same two phases. */
        @Test
        void theGreatestAmplifiersHadBestShareTwoPhases() {
            Map<String, double[]> shares = new LadderProver(hall, 0).shares().byLoad();

            assertThat(shares).hasSize(hall.loads().size());
            assertThat(shares.values())
                    .allSatisfy(share -> assertThat(Arrays.stream(share).sum()).isCloseTo(1, within(1e-6)));
            for (String sub : List.of("sub-left-1", "sub-left-2", "sub-right-1", "sub-right-2")) {
                assertThat(shares.get(sub)[0b011]).as(sub).isCloseTo(1, within(1e-6));
            }
        }
    }

    @Test
    void saysMoreOfADrawnProjectThanThePeakAlone() {
        Project project = Sample.venue(1, VenueSize.ofPanels(8)).project();

        double peak = ProvenBounds.of(project, () -> true).peakInrushAmps();

        assertThat(new LadderProver(project, peak, false).amps(() -> false)).isGreaterThan(1.1 * peak);
    }

    @Test
    void isToldToStopAndSaysWhatIsKnown() {
        Project project = random(new Random(1));

        assertThat(new LadderProver(project, 5, false).amps(() -> true)).isEqualTo(5);
    }

    private static Project random(Random random) {
        List<LoadBuilder> loads = new ArrayList<>();
        for (int i = 0; i < 2 + random.nextInt(2); i++) {
            double running = 1 + random.nextInt(20);
            loads.add(flash("P" + i, 1 + random.nextInt(3), running, running * random.nextDouble(), 0)
                    .processing());
        }
        for (int i = 0; i < 2 + random.nextInt(3); i++) {
            double running = 1 + random.nextInt(20);
            loads.add(flash("A" + i, 1 + random.nextInt(2), running, running * random.nextDouble(), random.nextInt(100))
                    .amplifier());
        }
        return project(loads.toArray(LoadBuilder[]::new));
    }

    /** Every way to put loads on phases, each with every order of amplifiers after all else. */
    private static final class EveryWay {
        private static final int PHASES = 3;

        private final List<Load> early;
        private final List<Load> amplifiers;
        private double least = Double.POSITIVE_INFINITY;

        static double least(Project project) {
            EveryWay ways = new EveryWay(project);
            ways.seat(0, new int[project.loads().size()]);
            return ways.least;
        }

        private EveryWay(Project project) {
            early = project.loads().stream()
                    .filter(load -> load.role() != Role.AMPLIFIER)
                    .toList();
            amplifiers = project.loads().stream()
                    .filter(load -> load.role() == Role.AMPLIFIER)
                    .toList();
        }

        private void seat(int next, int[] masks) {
            if (next == masks.length) {
                double[] running = new double[PHASES];
                double[] bases = new double[PHASES];
                for (int i = 0; i < masks.length; i++) {
                    add(running, masks[i], load(i).runningAmps());
                    add(bases, masks[i], i < early.size() ? load(i).baseAmps() : 0);
                }
                double mean = (running[0] + running[1] + running[2]) / PHASES;
                double deviation = 0;
                for (double each : running) {
                    deviation = Math.max(deviation, Math.abs(each - mean));
                }
                least = Math.min(least, order(0, highest(bases), bases, masks) + 2 * deviation);
                return;
            }
            for (int mask = 1; mask < 1 << PHASES; mask++) {
                if (Integer.bitCount(mask) == load(next).poles()) {
                    masks[next] = mask;
                    seat(next + 1, masks);
                }
            }
        }

        private Load load(int i) {
            return i < early.size() ? early.get(i) : amplifiers.get(i - early.size());
        }

        private double order(int on, double peakAmps, double[] bases, int[] masks) {
            if (on == (1 << amplifiers.size()) - 1) {
                return peakAmps;
            }
            double best = Double.POSITIVE_INFINITY;
            for (int i = 0; i < amplifiers.size(); i++) {
                if ((on >> i & 1) == 0) {
                    int mask = masks[early.size() + i];
                    double[] then = bases.clone();
                    add(then, mask, amplifiers.get(i).baseAmps());
                    double[] drawn = then.clone();
                    add(drawn, mask, amplifiers.get(i).excessAmps());
                    best = Math.min(best, order(on | 1 << i, Math.max(peakAmps, highest(drawn)), then, masks));
                }
            }
            return best;
        }

        private static void add(double[] to, int mask, double amps) {
            for (int phase = 0; phase < PHASES; phase++) {
                to[phase] += (mask >> phase & 1) != 0 ? amps : 0;
            }
        }

        private static double highest(double[] of) {
            return Math.max(of[0], Math.max(of[1], of[2]));
        }
    }
}
