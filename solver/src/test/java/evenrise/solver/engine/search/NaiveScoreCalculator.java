package evenrise.solver.engine.search;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.plan.BoardSetting;
import evenrise.model.project.DeadBoard;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.project.Resume;
import evenrise.model.project.Role;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.sequence.StepTimes;
import evenrise.solver.engine.state.Charges;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToLongFunction;
import org.optaplanner.core.api.score.buildin.hardsoftlong.HardSoftLongScore;
import org.optaplanner.core.api.score.calculator.EasyScoreCalculator;

/**
 * The score of a plan, from scratch and in the plainest way: every load, pair and instant is looked at, by the model's own
 * functions. It shares with the search only how a broken rule is charged and in which units sums are kept.
 */
public final class NaiveScoreCalculator implements EasyScoreCalculator<WorkingPlan, HardSoftLongScore> {
    @Override
    public HardSoftLongScore calculateScore(WorkingPlan plan) {
        return new Look(plan).score();
    }

    /** One load as it sits. */
    private record Seat(Load load, int index, Place place, Output output, long onMicros) {
        boolean isOn() {
            return output != null;
        }

        boolean isComplete() {
            return place != null && (output != null || !load.switched());
        }
    }

    private static final class Look {
        private final CompiledProject compiled;
        private final Project project;
        private final List<Seat> seats = new ArrayList<>();
        private final Map<String, Seat> byId = new HashMap<>();
        private final Map<Integer, TreeMap<Integer, Seat>> boards = new TreeMap<>();

        Look(WorkingPlan plan) {
            compiled = plan.compiled();
            project = compiled.project;
            Map<String, BoardSetting> settings = new HashMap<>();
            for (BoardTiming board : plan.boards()) {
                String id = boardId(board.board());
                settings.put(
                        id,
                        new BoardSetting(
                                id,
                                board.getStartDelay().seconds(),
                                board.getStep().seconds()));
            }
            Map<String, Integer> lastUsed = new HashMap<>();
            for (LoadPlacement load : plan.loads()) {
                if (load.getOutput() != null) {
                    lastUsed.merge(
                            boardId(load.getOutput().board()), load.getOutput().ordinal() + 1, Math::max);
                }
            }
            StepTimes times = new StepTimes(project, settings, lastUsed);
            for (LoadPlacement load : plan.loads()) {
                Output output = load.getOutput();
                double on = output == null ? 0 : times.onSeconds(boardId(output.board()), output.ordinal() + 1);
                Load given = project.loads().get(load.load());
                Seat seat = new Seat(given, load.load(), load.getPlace(), output, Math.round(on * 1e6));
                seats.add(seat);
                byId.put(given.id(), seat);
                if (output != null) {
                    boards.computeIfAbsent(output.board(), b -> new TreeMap<>()).put(output.ordinal(), seat);
                }
            }
        }

        HardSoftLongScore score() {
            long hard = unassignedAndUnreached() + pairs() + roles() + groups() + boardsInOrder() + nodes();
            return HardSoftLongScore.of(-hard, -objective());
        }

        private String boardId(int board) {
            return project.boards().get(board).id();
        }

        private long unassignedAndUnreached() {
            long charge = 0;
            for (Seat seat : seats) {
                charge += seat.isComplete() ? 0 : Charges.UNASSIGNED;
                if (seat.place != null && seat.output != null) {
                    String panel = project.panels().get(seat.place.panel()).id();
                    boolean reached =
                            project.boards().get(seat.output.board()).reaches().contains(panel);
                    charge += reached ? 0 : Charges.PLACE;
                }
            }
            return charge;
        }

        private long pairs() {
            long charge = 0;
            for (Seat seat : seats) {
                for (String id : seat.load.apartFrom()) {
                    Seat other = byId.get(id);
                    boolean together =
                            seat.place != null && other.place != null && seat.place.panel() == other.place.panel();
                    charge += together ? Charges.PLACE : 0;
                }
                for (String id : seat.load.samePhaseAs()) {
                    Seat other = byId.get(id);
                    boolean differ = seat.place != null
                            && other.place != null
                            && seat.place.phaseMask() != other.place.phaseMask();
                    charge += differ ? Charges.PLACE : 0;
                }
                for (String id : seat.load.comesAfter()) {
                    Seat before = byId.get(id);
                    if (seat.isOn() && before.isOn()) {
                        long settled = before.onMicros + Math.round(before.load.settleSeconds() * 1e6);
                        charge += Charges.late(settled - seat.onMicros);
                    }
                }
            }
            return charge;
        }

        private long roles() {
            long processingOn = 0;
            long processingSettled = 0;
            long auxiliaryOn = 0;
            long lastOn = 0;
            for (Seat seat : seats) {
                if (seat.isOn()) {
                    lastOn = Math.max(lastOn, seat.onMicros);
                    if (seat.load.role() == Role.PROCESSING) {
                        processingOn = Math.max(processingOn, seat.onMicros);
                        processingSettled = Math.max(
                                processingSettled, seat.onMicros + Math.round(seat.load.settleSeconds() * 1e6));
                    } else if (seat.load.role() == Role.AUXILIARY) {
                        auxiliaryOn = Math.max(auxiliaryOn, seat.onMicros);
                    }
                }
            }
            long charge = 0;
            for (Seat seat : seats) {
                if (seat.isOn() && seat.load.role() == Role.AMPLIFIER) {
                    charge += Charges.late(processingSettled - seat.onMicros);
                    charge += Charges.late(auxiliaryOn - seat.onMicros);
                } else if (seat.isOn() && seat.load.role() == Role.AUXILIARY) {
                    charge += Charges.late(processingOn - seat.onMicros);
                }
            }
            double limit = project.maxDurationSeconds().orElse(Double.POSITIVE_INFINITY);
            return Double.isInfinite(limit) ? charge : charge + Charges.late(lastOn - Math.round(limit * 1e6));
        }

        private long groups() {
            int largestBoard = boardSizes().stream().max(Integer::compare).orElse(0);
            long charge = 0;
            for (ShutdownGroup group : project.shutdownGroups()) {
                long members = project.loads().stream()
                        .filter(load -> load.switched() && load.shutdownGroup().equals(Optional.of(group.id())))
                        .count();
                Set<Integer> onBoards = new HashSet<>();
                Map<Integer, Integer> inPanels = new HashMap<>();
                for (Seat seat : seats) {
                    if (isOf(seat, group)) {
                        if (seat.output != null) {
                            onBoards.add(seat.output.board());
                        }
                        if (seat.place != null) {
                            inPanels.merge(seat.place.panel(), 1, Integer::sum);
                        }
                    }
                }
                if (members <= largestBoard) {
                    charge += Charges.PLACE * Math.max(0, onBoards.size() - 1);
                } else {
                    for (int board : onBoards) {
                        charge += Charges.PLACE
                                * boards.get(board).values().stream()
                                        .filter(seat -> !isOf(seat, group))
                                        .count();
                    }
                }
                int placed =
                        inPanels.values().stream().mapToInt(Integer::intValue).sum();
                int most = inPanels.values().stream().max(Integer::compare).orElse(0);
                charge += group.samePanel() ? Charges.PLACE * (placed - most) : 0;
            }
            return charge;
        }

        private List<Integer> boardSizes() {
            return project.boards().stream()
                    .map(board -> project.boardTypes().stream()
                            .filter(type -> type.id().equals(board.type()))
                            .findFirst()
                            .orElseThrow()
                            .outputs())
                    .toList();
        }

        private static boolean isOf(Seat seat, ShutdownGroup group) {
            return seat.load.switched() && seat.load.shutdownGroup().equals(Optional.of(group.id()));
        }

        private long boardsInOrder() {
            long charge = 0;
            for (TreeMap<Integer, Seat> board : boards.values()) {
                long drops = board.values().stream().filter(this::drops).count();
                charge += Charges.PLACE * Math.min(drops, board.size() - drops);
                Set<String> seen = new HashSet<>();
                Optional<String> previous = Optional.empty();
                for (Seat seat : board.values()) {
                    Optional<String> group = seat.load.shutdownGroup();
                    boolean begins = group.isPresent() && !group.equals(previous);
                    charge += begins && !seen.add(group.get()) ? Charges.PLACE : 0;
                    previous = group;
                }
            }
            return charge;
        }

        private boolean drops(Seat seat) {
            return project.shutdownGroups().stream()
                    .anyMatch(group -> isOf(seat, group) && group.onEmergency() == OnEmergency.DROP);
        }

        private long nodes() {
            double fraction = project.supply().continuousFraction();
            long charge = node(
                    seats,
                    project.supply().ratedAmps() * fraction,
                    project.supply().ratedAmps() * project.supply().neutralFactor(),
                    project.supply().inrushLimitAmps().orElse(Double.POSITIVE_INFINITY));
            for (int panel = 0; panel < project.panels().size(); panel++) {
                Panel given = project.panels().get(panel);
                charge += node(
                        in(panel),
                        given.ratedAmps() * given.continuousFraction().orElse(fraction),
                        given.ratedAmps() * given.neutralFactor(),
                        given.inrushLimitAmps().orElse(Double.POSITIVE_INFINITY));
            }
            return charge;
        }

        private List<Seat> in(int panel) {
            return seats.stream()
                    .filter(seat -> seat.place != null && seat.place.panel() == panel)
                    .toList();
        }

        private long node(List<Seat> here, double running, double neutral, double inrush) {
            long charge = 0;
            for (long current : runningNano(here)) {
                charge += Charges.overMilliAmps(current - Math.round(running * 1e9));
            }
            charge += Charges.overMilliAmps(neutralNano(here) - neutral * 1e9);
            if (Double.isFinite(inrush)) {
                double excess = peakUnits(here) / compiled.envelopes.unitsPerAmp - inrush;
                charge += Charges.overMilliAmps(excess * 1e9);
                charge += events(here, inrush);
            }
            return charge;
        }

        private long events(List<Seat> here, double inrush) {
            long charge = 0;
            for (PlanEvent event : project.behaviourOrDefault().inrushLimitHoldsFor()) {
                long worst = 0;
                for (int phase = 0; phase < compiled.phaseCount; phase++) {
                    worst = Math.max(worst, eventUnits(event, here, phase));
                }
                double excess = worst / compiled.envelopes.unitsPerAmp - inrush;
                charge += Charges.overMilliAmps(excess * 1e9);
            }
            return charge;
        }

        private long eventUnits(PlanEvent event, List<Seat> here, int phase) {
            List<Seat> live = here.stream()
                    .filter(seat -> touches(seat, phase) && (seat.isOn() || !seat.load.switched()))
                    .toList();
            List<Seat> always =
                    live.stream().filter(seat -> !seat.load.switched()).toList();
            return switch (event) {
                case RETURN -> returnUnits(always, live, phase);
                case RELEASE -> seats.stream().anyMatch(this::drops) ? releaseUnits(live, phase) : 0;
                case BOARD_FAILURE ->
                    project.boards().isEmpty()
                            ? 0
                            : Math.max(returnUnits(always, live, phase), worstBoardUnits(always, live, phase));
                case DIP -> sum(live, this::anew);
            };
        }

        private long returnUnits(List<Seat> always, List<Seat> live, int phase) {
            return Math.max(sum(always, this::returning), sequenceLater(always, live, phase));
        }

        private long sequenceLater(List<Seat> always, List<Seat> live, int phase) {
            return peakUnits(live, phase) + sum(always, this::later) + sum(always, this::use) - sum(always, this::base);
        }

        /** What drops as in the sequence, all else as what is always on. */
        private long releaseUnits(List<Seat> live, int phase) {
            List<Seat> dropped = live.stream().filter(this::drops).toList();
            List<Seat> held = live.stream().filter(seat -> !drops(seat)).toList();
            List<Seat> back = dropped.stream().filter(seat -> !staysOff(seat)).toList();
            return sum(held, this::use) + peakUnits(back, phase);
        }

        /** The greatest sum of what is above the bases of those on; base by base taken off. */
        private long excessUnits(List<Seat> live, int phase) {
            List<Seat> on = live.stream().filter(Seat::isOn).toList();
            long peak = 0;
            for (Seat instant : on) {
                List<Seat> sofar = on.stream()
                        .filter(seat -> seat.onMicros <= instant.onMicros)
                        .toList();
                peak = Math.max(peak, unitsAt(sofar, phase, instant.onMicros) - sum(sofar, this::base));
            }
            return peak;
        }

        private long worstBoardUnits(List<Seat> always, List<Seat> live, int phase) {
            boolean waits = project.behaviourOrDefault().deadBoard() == DeadBoard.STOP;
            long worst = sum(live, this::use) + (waits ? excessUnits(live, phase) : 0);
            for (int board = 0; board < project.boards().size(); board++) {
                int dead = board;
                List<Seat> own = live.stream()
                        .filter(seat -> seat.isOn() && seat.output.board() == dead)
                        .toList();
                if (project.behaviourOrDefault().deadContacts() == DeadContacts.STAY) {
                    worst = Math.max(worst, sum(always, this::returning) + sum(own, this::returning));
                    worst = Math.max(
                            worst, sequenceLater(always, live, phase) + sum(own, this::use) + sum(own, this::later));
                }
                List<Seat> chain = live.stream()
                        .filter(seat -> seat.isOn() && isStartedBy(seat.output.board(), dead))
                        .toList();
                worst = Math.max(worst, sum(live, this::use) - sum(chain, this::use) + peakUnits(chain, phase));
            }
            return worst;
        }

        private boolean isStartedBy(int board, int head) {
            return board == head
                    || compiled.after[board] != CompiledProject.NONE && isStartedBy(compiled.after[board], head);
        }

        private double useAmps(Seat seat) {
            return Math.sqrt(2) * Math.max(seat.load.idleAmps(), seat.load.runningAmps());
        }

        private long use(Seat seat) {
            return units(useAmps(seat));
        }

        private long anew(Seat seat) {
            double base = Math.sqrt(2) * seat.load.idleAmps();
            return units(useAmps(seat) + Math.max(0, seat.load.inrushAmps() - base));
        }

        private boolean staysOff(Seat seat) {
            boolean isMotor =
                    seat.load.equipment().filter(it -> it.motor().isPresent()).isPresent();
            return isMotor
                    && project.behaviourOrDefault().motorsResume().equals(java.util.Optional.of(Resume.STAY_OFF));
        }

        private long returning(Seat seat) {
            return staysOff(seat) ? use(seat) : anew(seat);
        }

        private long base(Seat seat) {
            return units(InrushEnvelope.of(seat.load, project.timingToleranceSeconds())
                    .baseAmps());
        }

        private long later(Seat seat) {
            double wait = project.behaviourOrDefault().steadyWaitSeconds() - project.timingToleranceSeconds();
            if (staysOff(seat)) {
                return 0;
            }
            return units(InrushEnvelope.of(seat.load, project.timingToleranceSeconds())
                    .excessLeftAmps(Math.max(0, wait)));
        }

        private static long sum(List<Seat> some, ToLongFunction<Seat> units) {
            return some.stream().mapToLong(units).sum();
        }

        private long[] runningNano(List<Seat> here) {
            long[] sums = new long[compiled.phaseCount];
            for (Seat seat : here) {
                for (int phase = 0; phase < sums.length; phase++) {
                    sums[phase] += touches(seat, phase) ? Math.round(seat.load.runningAmps() * 1e9) : 0;
                }
            }
            return sums;
        }

        private static boolean touches(Seat seat, int phase) {
            return seat.place != null && (seat.place.phaseMask() >> phase & 1) != 0;
        }

        private double neutralNano(List<Seat> here) {
            long real = 0;
            long imaginary = 0;
            long third = 0;
            for (Seat seat : here) {
                for (int phase = 0; phase < compiled.phaseCount; phase++) {
                    if (touches(seat, phase) && seat.load.poles() == 1) {
                        Phase name = project.supply().system().phases().get(phase);
                        Load load = seat.load;
                        NeutralCurrent.Share share = NeutralCurrent.share(
                                project.supply().system(),
                                name,
                                load.runningAmps(),
                                load.leading() ? Lag.ahead(load.powerFactor()) : Lag.behind(load.powerFactor()),
                                load.harmonicRatio());
                        real += Math.round(share.realAmps() * 1e9);
                        imaginary += Math.round(share.imaginaryAmps() * 1e9);
                        third += Math.round(share.thirdAmps() * 1e9);
                    }
                }
            }
            return Math.sqrt((double) real * real + (double) imaginary * imaginary + (double) third * third);
        }

        private long peakUnits(List<Seat> here) {
            long peak = 0;
            for (int phase = 0; phase < compiled.phaseCount; phase++) {
                peak = Math.max(peak, peakUnits(here, phase));
            }
            return peak;
        }

        private long peakUnits(List<Seat> here, int phase) {
            long peak = unitsAt(here, phase, -1); // unswitched loads alone
            for (Seat instant : here) {
                if (instant.isOn() && touches(instant, phase)) {
                    peak = Math.max(peak, unitsAt(here, phase, instant.onMicros));
                }
            }
            return peak;
        }

        private long unitsAt(List<Seat> here, int phase, long micros) {
            long sum = 0;
            for (Seat seat : here) {
                if (touches(seat, phase)) {
                    InrushEnvelope envelope = InrushEnvelope.of(seat.load, project.timingToleranceSeconds());
                    if (!seat.load.switched()) {
                        sum += units(envelope.baseAmps());
                    } else if (seat.isOn() && seat.onMicros <= micros) {
                        double later = (micros - seat.onMicros) / 1e6;
                        sum += units(envelope.amps(0, envelope.startSeconds(later)));
                    }
                }
            }
            return sum;
        }

        private long units(double amps) {
            return Math.round(amps * compiled.envelopes.unitsPerAmp);
        }

        private long objective() {
            var weights = project.objective();
            double panels = 0;
            for (int panel = 0; panel < project.panels().size(); panel++) {
                panels += deviationNano(in(panel), project.panels().get(panel).phaseRotation());
            }
            long lastOn = seats.stream()
                    .filter(Seat::isOn)
                    .mapToLong(Seat::onMicros)
                    .max()
                    .orElse(0);
            return Math.round(1000
                    * (weights.peakInrush() * (peakUnits(seats) / compiled.envelopes.unitsPerAmp)
                            + weights.supplyImbalance() * (deviationNano(seats, List.of()) / 1e9)
                            + weights.panelImbalance() * (panels / 1e9)
                            + weights.duration() * lastOn / 1e6
                            + weights.boards() * boards.size()));
        }

        /** @param rotation phases that count; none for all of them */
        private long deviationNano(List<Seat> here, List<Phase> rotation) {
            long[] all = runningNano(here);
            List<Phase> phases = project.supply().system().phases();
            long[] sums = phases.stream()
                    .filter(phase -> rotation.isEmpty() || rotation.contains(phase))
                    .mapToLong(phase -> all[phases.indexOf(phase)])
                    .toArray();
            long total = 0;
            for (long sum : sums) {
                total += sum;
            }
            long largest = 0;
            for (long sum : sums) {
                largest = Math.max(largest, Math.abs(sum * sums.length - total));
            }
            return largest / sums.length;
        }
    }
}
