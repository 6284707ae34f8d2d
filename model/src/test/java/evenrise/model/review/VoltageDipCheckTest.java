package evenrise.model.review;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.PanelBuilder;
import evenrise.model.PlanBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import evenrise.model.project.DipCriterion;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Electrical;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.RideThrough;
import evenrise.model.project.Role;
import evenrise.model.project.SupplySource;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** A utility of 600 A behind 120 V: 0.2 Ω, so 6 A make 1 % of dip. */
class VoltageDipCheckTest {
    private static final Plan ONE_AFTER_THE_OTHER = aPlan().assignments(
                    anAssignment("first").at("P1", 1).on("B1", 1),
                    anAssignment("second").at("P1", 2).on("B1", 2))
            .build();

    /** A slow inrush counts for its crest over √2; it begins at {@code excessAmps} rms over an idle current of nothing. */
    private static LoadBuilder load(String id, double excessAmps, double halfMillis) {
        return aLoad(id)
                .runningAmps(0)
                .idleAmps(0)
                .inrushPeakAmps(Math.sqrt(2) * excessAmps)
                .inrushHalfMillis(halfMillis);
    }

    private static Reviews reviewed(
            PanelBuilder panel, List<DipCriterion> criteria, LoadBuilder first, LoadBuilder second) {
        Electrical electrical = Electrical.builder()
                .source(Sources.utility(600))
                .dipCriteria(criteria)
                .build();
        return Reviews.of(
                new VoltageDipCheck(),
                aProject()
                        .electrical(electrical)
                        .panels(panel)
                        .boards(aBoard("B1"))
                        .loads(first, second)
                        .build(),
                ONE_AFTER_THE_OTHER);
    }

    private static Reviews reviewed(List<DipCriterion> criteria, LoadBuilder first, LoadBuilder second) {
        return reviewed(aPanel("P1"), criteria, first, second);
    }

    private static List<Remark> found(Reviews reviews) {
        return reviews.remarks().stream()
                .filter(remark -> remark.grade() != Grade.NOT_CHECKED)
                .toList();
    }

    @Test
    void addsWhatIsLeftOfEarlierInrush() {
        Reviews reviews = reviewed(List.of(), load("first", 30, 250), load("second", 30, 250));

        // Outputs are 0.25 s apart: 30 + 15 A on 0.2 Ω of 120 V
        assertThat(reviews.figure("supply", "deepest dip")).isCloseTo(7.5, within(0.05));
    }

    @Test
    void addsTheFeedersLineAndNeutral() {
        PanelBuilder fed = aPanel("P1").feeder(Cabling.feeder(Cabling.cable("12 AWG", 30.48), 20));
        Reviews reviews = reviewed(fed, List.of(), load("first", 6, 1e-3), load("second", 0, 1));

        double supply = reviews.figure("supply", "deepest dip");
        // 12 AWG: 0.2 + j0.0054 Ω there and as much back, behind a source of 0.2 Ω, X/R 5, so 0.0392 + j0.1961 Ω:
        // together
        // 0.4392 + j0.2069 Ω, of length 0.4855
        assertThat(reviews.figure("P1", "deepest dip")).isCloseTo(0.4855 / 0.2 * supply, within(0.01 * supply));
    }

    /** 36 A each on A, B and C at the end of 100 ft of 12 AWG; EN 50160 draws its line at 10 %. */
    static Reviews threeAlikeAtOnce() {
        Electrical electrical = Electrical.builder()
                .source(Sources.utility(600))
                .dipCriteria(List.of(DipCriterion.EN_50160))
                .build();
        LoadBuilder[] loads = {load("a", 36, 500), load("b", 36, 500), load("c", 36, 500)};
        return Reviews.of(
                new VoltageDipCheck(),
                aProject()
                        .electrical(electrical)
                        .panels(aPanel("P1").feeder(Cabling.feeder(Cabling.cable("12 AWG", 30.48), 20)))
                        .boards(aBoard("B1"), aBoard("B2"), aBoard("B3"))
                        .loads(loads)
                        .build(),
                aPlan().assignments(
                                anAssignment("a").at("P1", 1).on("B1", 1),
                                anAssignment("b").at("P1", 3).on("B2", 1),
                                anAssignment("c").at("P1", 5).on("B3", 1))
                        .build());
    }

    @Nested
    class Criteria {
        @Test
        void changeIsWellUpToFourPercent() {
            List<DipCriterion> change = List.of(DipCriterion.IEC_61000_3_3);

            assertThat(found(reviewed(change, load("first", 23.99, 200), load("second", 0, 1))))
                    .isEmpty();
            assertThat(found(reviewed(change, load("first", 24.1, 200), load("second", 0, 1))))
                    .allSatisfy(remark -> {
                        assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
                        assertThat(remark.message()).contains("'first'", "0.00 s", "4.0 %");
                    })
                    .isNotEmpty();
            assertThat(found(reviewed(change, load("first", 42.3, 200), load("second", 0, 1))))
                    .extracting(Remark::grade)
                    .containsOnly(Grade.BREAKS);
        }

        @Test
        void itiCountsDepthAndTime() {
            List<DipCriterion> iti = List.of(DipCriterion.ITI);

            // A linear 25 % is at most 24.3 %, and below 80 % for h · log2(25/20.4) = 0.293 h, allowed 0.5 s
            assertThat(found(reviewed(iti, load("first", 150, 1500), load("second", 0, 1))))
                    .isEmpty();
            assertThat(found(reviewed(iti, load("first", 150, 1750), load("second", 0, 1))))
                    .isNotEmpty()
                    .allSatisfy(remark -> assertThat(remark.message()).contains("below 80 %", "500 ms"));
        }

        @Test
        void saysThatNoneIsNamed() {
            assertThat(reviewed(List.of(), load("first", 1, 1), load("second", 1, 1))
                            .remarks())
                    .extracting(Remark::message)
                    .anySatisfy(message -> assertThat(message).contains("electrical.dip_criteria"));
        }
    }

    @Nested
    class Victims {
        private List<Remark> of(double excessAmps, RideThrough needs) {
            return found(reviewed(List.of(), load("first", 0, 1).rideThrough(needs), load("second", excessAmps, 200)));
        }

        @Test
        void areNamedWithTheStepThatBrownsThemOut() {
            assertThat(of(
                            61,
                            RideThrough.builder()
                                    .remainingPercent(90)
                                    .withoutMillis(0)
                                    .build()))
                    .singleElement()
                    .satisfies(remark -> {
                        assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
                        assertThat(remark.place()).isEqualTo("first");
                        assertThat(remark.message()).contains("'second'", "0.25 s", "'first'", "90.0 %");
                    });
        }

        @Test
        void rideThroughAShallowerStep() {
            assertThat(of(
                            59,
                            RideThrough.builder()
                                    .remainingPercent(90)
                                    .withoutMillis(0)
                                    .build()))
                    .isEmpty();
        }

        @Test
        void rideThroughAShortStep() {
            // 20 % dip is above 10 % for one half-life of 200 ms
            assertThat(of(
                            120,
                            RideThrough.builder()
                                    .remainingPercent(90)
                                    .withoutMillis(210)
                                    .build()))
                    .isEmpty();
            assertThat(of(
                            120,
                            RideThrough.builder()
                                    .remainingPercent(90)
                                    .withoutMillis(190)
                                    .build()))
                    .hasSize(1);
        }

        /** A deep step that is over in time does not hide a shallower one that lasts. */
        @Test
        void areNamedWithTheStepThatLastsNotTheDeepest() {
            Plan three = aPlan().assignments(
                            anAssignment("first").at("P1", 1).on("B1", 1),
                            anAssignment("second").at("P1", 2).on("B1", 2),
                            anAssignment("third").at("P1", 7).on("B1", 3))
                    .build();
            Electrical electrical =
                    Electrical.builder().source(Sources.utility(600)).build();
            Reviews reviews = Reviews.of(
                    new VoltageDipCheck(),
                    aProject()
                            .electrical(electrical)
                            .boards(aBoard("B1"))
                            .loads(
                                    load("first", 0, 1)
                                            .rideThrough(RideThrough.builder()
                                                    .remainingPercent(90)
                                                    .withoutMillis(50)
                                                    .build()),
                                    load("second", 600, 1),
                                    load("third", 70, 300))
                            .build(),
                    three);

            assertThat(found(reviews))
                    .singleElement()
                    .satisfies(remark -> assertThat(remark.message()).contains("'third'", "0.50 s"));
        }

        @Test
        void areNoVictimsOfWhatCameBefore() {
            assertThat(found(reviewed(
                            List.of(),
                            load("first", 120, 20),
                            load("second", 0, 1)
                                    .rideThrough(RideThrough.builder()
                                            .remainingPercent(90)
                                            .withoutMillis(0)
                                            .build()))))
                    .isEmpty();
        }
    }

    @Test
    void saysThatItLacksASource() {
        Reviews reviews = Reviews.of(new VoltageDipCheck(), aProject().build(), aPlan().build());

        assertThat(reviews.remarks())
                .singleElement()
                .satisfies(remark -> assertThat(remark.message()).contains("electrical.source"));
    }

    @Test
    void saysWhatFieldASourceLacks() {
        Electrical electrical =
                Electrical.builder().source(Sources.bareTransformer()).build();
        SupplySource unused = electrical.source().orElseThrow();

        assertThat(unused.impedancePercent()).isEmpty();
        assertThat(Reviews.of(
                                new VoltageDipCheck(),
                                aProject().electrical(electrical).build(),
                                aPlan().build())
                        .remarks())
                .singleElement()
                .satisfies(remark -> assertThat(remark.message()).contains("impedance_pct"));
    }

    /** 98 panels behind a node behind the supply: 100 points, so 30 loads are 3,000 and 31 are 3,100. */
    @Nested
    class OfALargeTree {
        private static Reviews with(int loads) {
            List<Panel> panels = IntStream.rangeClosed(1, 98)
                    .mapToObj(i -> Panel.builder()
                            .id("P" + i)
                            .slots(400)
                            .ratedAmps(400)
                            .fedFrom(Optional.of("N"))
                            .build())
                    .toList();
            List<Load> steady = IntStream.rangeClosed(1, loads)
                    .mapToObj(i -> Load.builder()
                            .id("L" + i)
                            .role(Role.AUXILIARY)
                            .switched(false)
                            .poles(1)
                            .breakerAmps(16)
                            .runningAmps(0.1)
                            .rideThrough(Optional.of(
                                    RideThrough.builder().remainingPercent(70).build()))
                            .build())
                    .toList();
            PlanBuilder plan = aPlan();
            steady.forEach(load -> plan.assignments(
                    anAssignment(load.id()).at("P1", Integer.parseInt(load.id().substring(1)))));
            Project project = aProject()
                    .electrical(
                            Electrical.builder().source(Sources.utility(600)).build())
                    .build()
                    .with()
                    .nodes(List.of(
                            DistributionNode.builder().id("N").ratedAmps(1000).build()))
                    .panels(panels)
                    .loads(steady)
                    .build();
            return Reviews.of(new VoltageDipCheck(3_000), project, plan.build());
        }

        private static List<String> unchecked(Reviews reviews) {
            return reviews.remarks().stream()
                    .filter(remark -> remark.grade() == Grade.NOT_CHECKED)
                    .map(Remark::message)
                    .filter(message -> message.contains("tree"))
                    .toList();
        }

        @Test
        void saysThatItDoesNotPlayTheStepsNorWhatRidesThrough() {
            assertThat(unchecked(with(31)))
                    .hasSize(2)
                    .anySatisfy(message -> assertThat(message).contains("31 loads and 100 points"))
                    .anySatisfy(message -> assertThat(message).contains("ride through"));
        }

        @Test
        void playsThemUpToTheMostLoadsTimesPoints() {
            assertThat(unchecked(with(30))).isEmpty();
        }
    }
}
