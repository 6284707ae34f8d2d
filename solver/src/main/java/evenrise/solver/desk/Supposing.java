package evenrise.solver.desk;

import evenrise.model.answer.Supposition;
import evenrise.model.contract.Words;
import evenrise.model.event.EventFinding;
import evenrise.model.event.Happening;
import evenrise.model.event.Trace;
import evenrise.model.project.Role;
import evenrise.model.project.Scene;
import evenrise.model.review.NextLoad;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.UseCurrents;
import evenrise.model.rules.Verdict;
import evenrise.solver.app.Effort;
import evenrise.solver.app.FewMoves;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.RehearseRequest;
import evenrise.solver.app.Source;
import evenrise.solver.app.WhatIfRequest;
import evenrise.solver.app.WhatIfResult;
import evenrise.solver.desk.SupposedAnswers.FoundView;
import evenrise.solver.desk.SupposedAnswers.MomentView;
import evenrise.solver.desk.SupposedAnswers.PlayedView;
import evenrise.solver.desk.SupposedAnswers.PointView;
import evenrise.solver.desk.SupposedAnswers.RoomView;
import evenrise.solver.desk.SupposedAnswers.ScenesView;
import evenrise.solver.desk.SupposedAnswers.SupposedView;
import evenrise.solver.desk.SupposedAnswers.UseView;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Asks what if: one load more, another use of the plant, something that happens, a plant that is otherwise. */
final class Supposing implements DeskPart {
    private static final int MOST_SHOWN = 2000;

    private final Desk desk;
    private final Jobs jobs;

    Supposing(Desk desk, Jobs jobs) {
        this.desk = desk;
        this.jobs = jobs;
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.asked(
                "/api/room",
                "Where one more load could go",
                SupposedRequests.Room.class,
                SupposedAnswers.RoomsView.class,
                this::room);
        routes.shown("/api/scenes", "What every point carries in each scene", ScenesView.class, this::scenes);
        routes.asked(
                "/api/play",
                "Something happens to the plant, and what follows",
                SupposedRequests.Play.class,
                PlayedView.class,
                this::play);
        routes.asked(
                "/api/suppose",
                "The best plan near this one if something of the plant were otherwise; nothing is changed",
                SupposedRequests.Suppose.class,
                SupposedView.class,
                this::suppose);
    }

    private SupposedAnswers.RoomsView room(SupposedRequests.Room asked) {
        Map<String, List<NextLoad.Place>> byPanel = new LinkedHashMap<>();
        NextLoad.places(desk.judged().layout(), asked.poles()).stream()
                .filter(each -> each.amps() >= asked.amps())
                .filter(each -> !asked.switched() || each.takesSwitched())
                .forEach(each -> byPanel.computeIfAbsent(each.panel(), any -> new ArrayList<>())
                        .add(each));
        List<RoomView> rooms = new ArrayList<>();
        byPanel.forEach((panel, places) -> places.forEach(each -> rooms.add(
                new RoomView(panel, each.slots(), each.phases(), each.amps(), each.limit(), each.countsFeeder()))));
        return new SupposedAnswers.RoomsView(
                desk.revision(), rooms.stream().limit(MOST_SHOWN).toList());
    }

    private ScenesView scenes() {
        JudgedState now = desk.judged();
        List<UseView> uses = new ArrayList<>();
        uses.add(use("", now, now.layout().fullUse()));
        List<Scene> scenes = now.state().project().scenes();
        for (int i = 0; i < scenes.size(); i++) {
            uses.add(use(scenes.get(i).id(), now, now.layout().sceneUses().get(i)));
        }
        return new ScenesView(desk.revision(), uses);
    }

    private static UseView use(String id, JudgedState now, UseCurrents use) {
        double supplyAmps = now.state().project().supply().ratedAmps();
        return new UseView(
                id,
                now.layout().distribution().points().stream()
                        .map(point -> new PointView(
                                point.id(),
                                List.copyOf(use.runningAmps(point).keySet()),
                                List.copyOf(use.runningAmps(point).values()),
                                rated(point, supplyAmps)))
                        .toList());
    }

    private static double rated(Point point, double supplyAmps) {
        return point.panel().isPresent() || point.node().isPresent() ? point.ratedAmps() : supplyAmps;
    }

    private PlayedView play(SupposedRequests.Play asked) {
        DeskState state = desk.judged().state();
        Trace trace = jobs.rehearse(new RehearseRequest(
                        Source.of(state.project()),
                        Source.of(state.plan()),
                        Optional.empty(),
                        asked.events(),
                        asked.idle(),
                        Optional.empty()))
                .trace();
        return new PlayedView(
                trace.endSeconds(),
                trace.steps().stream()
                        .limit(MOST_SHOWN)
                        .map(each -> new MomentView(
                                each.atSeconds(),
                                each.load(),
                                each.text(),
                                each.loadsOn(),
                                each.shown().words()))
                        .toList(),
                trace.episodes().stream()
                        .map(each -> new SupposedAnswers.EpisodeView(
                                each.fromSeconds(),
                                each.toSeconds(),
                                each.text(),
                                each.closed(),
                                each.opened(),
                                each.peaks().get(0).boundAmps(),
                                each.peaks().get(0).limitAmps()))
                        .toList(),
                trace.findings().stream()
                        .map(each -> new FoundView(
                                each.atSeconds(), each.grade() == EventFinding.Grade.BROKEN, each.message()))
                        .toList(),
                Arrays.stream(Happening.values()).map(Words::word).toList());
    }

    private SupposedView suppose(SupposedRequests.Suppose asked) {
        DeskState state = desk.judged().state();
        WhatIfResult result = jobs.whatIf(
                new WhatIfRequest(
                        Source.of(state.project()),
                        Source.of(state.plan()),
                        suppositions(asked),
                        Effort.ofTime(Duration.ofMillis((long) (asked.timeSeconds() * 1000))),
                        asked.mostMoved().isPresent()
                                ? FewMoves.most(asked.mostMoved().getAsInt())
                                : FewMoves.ANY),
                JobControl.NONE);
        Verdict after = result.after().verdict();
        return new SupposedView(
                result.suppositions().stream().map(Supposition::words).toList(),
                result.before().metrics(),
                after.metrics(),
                after.violations(),
                result.impossible());
    }

    private static List<Supposition> suppositions(SupposedRequests.Suppose asked) {
        List<Supposition> all = new ArrayList<>();
        asked.without().ifPresent(panel -> all.add(new Supposition.Without(panel)));
        asked.full().ifPresent(panel -> all.add(new Supposition.Full(panel)));
        if (asked.addedAmps().isPresent()) {
            all.add(new Supposition.Added(
                    asked.addedAmps().getAsDouble(),
                    asked.addedPoles(),
                    asked.addedSwitched() ? Optional.of(Role.AUXILIARY) : Optional.empty()));
        }
        if (asked.limitAmps().isPresent()) {
            all.add(new Supposition.Limited(asked.limitedAt(), asked.limitAmps().getAsDouble()));
        }
        if (all.isEmpty()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "nothing is supposed. Say what is to be otherwise.");
        }
        return all;
    }
}
