package evenrise.model.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Electrical;
import evenrise.model.project.Load;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.review.ElectricalReview;
import evenrise.model.rules.Layout;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Proposals taken over into random projects with random cables. */
@Tag("random")
class SizerPropertyTest {
    private static final Set<String> CHECKS =
            Set.of("breaker-rating", "conductor", "voltage-drop", "disconnection", "motor-circuit");
    private static final Set<String> KINDS =
            Set.of("too-small", "conductor-too-small", "cable-too-small", "drops-too-far", "slow-disconnection");

    private static Project cabled(Project project, Practice practice, Random random) {
        Electrical electrical = project.electrical()
                .orElseGet(() -> Electrical.builder().build())
                .withPractice(Optional.of(practice));
        List<Load> loads = project.loads().stream()
                .map(load -> load.withCircuit(Optional.of(load.circuit()
                        .orElseGet(() -> Circuit.builder().build())
                        .withCable(Optional.of(Cable.builder()
                                .lengthMetres(1 + random.nextInt(60))
                                .size(practice == Practice.NEC ? "12 AWG" : "2.5 mm2")
                                .build())))))
                .toList();
        return project.withElectrical(Optional.of(electrical)).withLoads(loads);
    }

    private static List<Remark> against(Project project, Plan plan) {
        return ElectricalReview.of(Layout.of(project, plan), CHECKS).remarks().stream()
                .filter(each -> each.grade() == Grade.BREAKS || each.grade() == Grade.EXCEEDS_RECOMMENDATION)
                .filter(each -> KINDS.contains(each.kind()))
                .toList();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void passTheChecksAndOneSizeLessDoesNot(long seed) {
        ARandomProject.Planted planted = ARandomProject.planted(seed);
        Project project = cabled(planted.project(), seed % 2 == 0 ? Practice.NEC : Practice.IEC, new Random(seed));

        Sizes sizes = Sizer.of(project, Optional.of(planted.plan()));

        List<Proposal> cables = sizes.of(Part.BRANCH_CABLE).stream()
                .filter(each -> each.proposed().isPresent())
                .toList();
        assertThat(cables).isNotEmpty();
        Set<String> sized = Set.copyOf(cables.stream().map(Proposal::place).toList());
        assertThat(against(sizes.taken(), planted.plan()))
                .filteredOn(each -> sized.contains(each.place()))
                .isEmpty();
        Map<String, Size> less = new HashMap<>();
        cables.forEach(each -> below(each).ifPresent(size -> less.put(each.place(), size)));
        Draft draft = new Draft();
        draft.put(Part.BRANCH_CABLE, less);
        assertThat(against(draft.into(sizes.taken()), planted.plan()))
                .extracting(Remark::place)
                .containsAll(less.keySet());
        Map<String, Size> lessRated = new HashMap<>();
        sizes.of(Part.BREAKER)
                .forEach(each -> below(each)
                        .filter(size ->
                                size.amount() < each.proposed().orElseThrow().amount())
                        .ifPresent(size -> lessRated.put(each.place(), size)));
        Draft breakers = new Draft();
        breakers.put(Part.BREAKER, lessRated);
        assertThat(against(breakers.into(sizes.taken()), planted.plan()))
                .filteredOn(each -> each.check().equals("breaker-rating"))
                .extracting(Remark::place)
                .containsAll(lessRated.keySet());
    }

    /** The size just before the one that is proposed, which the governing criterion speaks against. */
    private static Optional<Size> below(Proposal proposal) {
        return proposal.answers().stream()
                .filter(each -> each.least().equals(proposal.proposed()))
                .findFirst()
                .flatMap(Answer::below);
    }
}
