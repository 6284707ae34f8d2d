package evenrise.model.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.Secondary;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import evenrise.model.review.ElectricalReview;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Feeders and transformers of random projects: every second panel hangs on a transformer to the same voltage, so that the
 * plan stays one, and each has a feeder of some length.
 */
@Tag("random")
class FeederSizerPropertyTest {
    private static final Set<String> CHECKS = Set.of("conductor", "transformer", "motor-feeder", "neutral-use");

    /** What speaks against a size of each part. */
    private static final Map<Part, Set<String>> KINDS = Map.of(
            Part.DEVICE,
            Set.of("device-too-small", "primary-device-too-large", "trips-when-energised"),
            Part.FEEDER_CABLE,
            Set.of("conductor-too-small", "cable-too-small", "cable-over-at-worst-use"),
            Part.TRANSFORMER,
            Set.of("over-nameplate"));

    static LongStream seeds() {
        return LongStream.range(1, 1000)
                .filter(seed -> ARandomProject.of(seed).supply().system() == PhaseSystem.THREE_PHASE)
                .limit(Integer.getInteger("evenrise.plants", 8));
    }

    private static Project fed(Project project, Practice practice, Random random) {
        List<Panel> panels = new ArrayList<>();
        for (Panel panel : project.panels()) {
            panels.add(panel.with()
                    .feeder(feeder(practice, random))
                    .fedFrom(panels.size() % 2 == 0 ? Optional.of("T") : Optional.empty())
                    .build());
        }
        Transformer transformer = Transformer.builder()
                .connection(TransformerConnection.WYE_WYE)
                .secondary(Secondary.builder()
                        .system(PhaseSystem.THREE_PHASE)
                        .lineToNeutralVolts(project.supply().lineToNeutralVolts())
                        .build())
                .ratedKva(OptionalDouble.of(15))
                .build();
        DistributionNode node = DistributionNode.builder()
                .id("T")
                .ratedAmps(4000)
                .transformer(transformer)
                .feeder(feeder(practice, random))
                .build();
        Electrical electrical = project.electrical()
                .orElseGet(() -> Electrical.builder().build())
                .withPractice(Optional.of(practice));
        return project.withElectrical(Optional.of(electrical))
                .withPanels(panels)
                .withNodes(List.of(node));
    }

    private static Optional<Feeder> feeder(Practice practice, Random random) {
        return Optional.of(Feeder.builder()
                .cable(Cable.builder()
                        .lengthMetres(1 + random.nextInt(40))
                        .size(practice == Practice.NEC ? "12 AWG" : "2.5 mm2")
                        .build())
                .build());
    }

    private static List<String> against(Project project, Plan plan, Part part) {
        return ElectricalReview.of(Layout.of(project, plan), CHECKS).remarks().stream()
                .filter(each -> each.grade() == Grade.BREAKS || each.grade() == Grade.EXCEEDS_RECOMMENDATION)
                .filter(each -> KINDS.get(part).contains(each.kind()))
                .map(Remark::place)
                .toList();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void passTheChecksAndOneSizeLessDoesNot(long seed) {
        ARandomProject.Planted planted = ARandomProject.planted(seed);
        Practice practice = seed % 2 == 0 ? Practice.NEC : Practice.IEC;
        Project project = fed(planted.project(), practice, new Random(seed));

        Sizes sizes = Sizer.of(project, Optional.of(planted.plan()));

        assertThat(sizes.of(Part.TRANSFORMER))
                .singleElement()
                .satisfies(each -> assertThat(each.proposed()).isPresent());
        for (Part part : KINDS.keySet()) {
            Map<String, Size> less = new HashMap<>();
            for (Proposal each : sizes.of(part)) {
                if (each.proposed().isPresent()) {
                    assertThat(against(sizes.taken(), planted.plan(), part))
                            .as("%s of %s", part, each.place())
                            .doesNotContain(each.place());
                    below(each).ifPresent(size -> less.put(each.place(), size));
                }
            }
            Draft draft = new Draft();
            draft.put(part, less);
            assertThat(against(draft.into(sizes.taken()), planted.plan(), part))
                    .as("%s", part)
                    .containsAll(less.keySet());
        }
    }

    /** The size before the one proposed, where a remark and not a designer's share of the drop speaks against it. */
    private static Optional<Size> below(Proposal proposal) {
        return proposal.answers().stream()
                .filter(each -> each.least().equals(proposal.proposed()))
                .filter(each -> !each.criterion().equals(Criteria.VOLTAGE_DROP)
                        && !each.criterion().equals(Criteria.DISCONNECTION))
                .findFirst()
                .flatMap(Answer::below);
    }
}
