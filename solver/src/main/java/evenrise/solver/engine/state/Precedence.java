package evenrise.solver.engine.state;

import evenrise.model.project.SwitchedSystem;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.IntStream;

/** The order of roles: of all loads, or of each system by itself, and of all that a system needs where they start together. */
public final class Precedence {
    private final CompiledProject compiled;
    private final RoleOrder[] orders;
    private final RoleOrder first;
    private final boolean isOne;

    Precedence(CompiledProject compiled) {
        this.compiled = compiled;
        orders = new RoleOrder[compiled.systemCount];
        for (int system = 0; system < orders.length; system++) {
            orders[system] = new RoleOrder(compiled);
        }
        first = orders[0];
        isOne = orders.length == 1;
        if (orders.length > 1 && !compiled.hasClocks) {
            List<List<Integer>> awaited = IntStream.range(0, orders.length)
                    .mapToObj(system -> needed(system, compiled.project.systems()))
                    .toList();
            for (int system = 0; system < orders.length; system++) {
                int self = system;
                List<Integer> awaiting = IntStream.range(0, orders.length)
                        .filter(other -> awaited.get(other).contains(self))
                        .boxed()
                        .toList();
                orders[system].await(of(awaited.get(system)), of(awaiting));
            }
        }
    }

    private RoleOrder[] of(List<Integer> systems) {
        return systems.stream().map(system -> orders[system]).toArray(RoleOrder[]::new);
    }

    /** A system and all that it needs, directly or not. */
    private static List<Integer> needed(int system, List<SwitchedSystem> systems) {
        Map<String, Integer> index = new HashMap<>();
        systems.forEach(each -> index.put(each.id(), index.size()));
        TreeSet<Integer> known = new TreeSet<>();
        Deque<Integer> open = new ArrayDeque<>(List.of(system));
        while (!open.isEmpty()) {
            int at = open.poll();
            if (known.add(at)) {
                systems.get(at).needs().forEach(id -> open.add(index.get(id)));
            }
        }
        return new ArrayList<>(known);
    }

    void add(int load, int instant, int sign) {
        (isOne ? first : orders[compiled.orderOf(load)]).add(load, instant, sign);
    }

    /** Order of the roles of the system that a load belongs to. */
    public RoleOrder of(int load) {
        return isOne ? first : orders[compiled.orderOf(load)];
    }

    /** Of all systems, or of the one that there is. */
    public RoleOrder[] orders() {
        return orders;
    }

    /** Time of the last switch-on, each system from its own command; 0 where nothing is switched. */
    long durationMicros() {
        if (isOne) {
            return first.durationMicros();
        }
        long duration = orders[0].durationMicros();
        for (int system = 1; system < orders.length; system++) {
            duration = Math.max(duration, orders[system].durationMicros());
        }
        return duration;
    }

    /** How long amplifiers wait, as {@link RoleOrder#readySeconds}; of systems the mean. */
    public double readySeconds() {
        if (isOne) {
            return first.readySeconds();
        }
        double sum = orders[0].readySeconds();
        for (int system = 1; system < orders.length; system++) {
            sum += orders[system].readySeconds();
        }
        return sum / orders.length;
    }

    /** Whether a load's switch-on is what others of a later role wait for, or comes before what it must wait for. */
    public boolean isTooLateOrTooEarly(int load, int instant) {
        return of(load).isTooLateOrTooEarly(load, instant);
    }

    /** Charge for every auxiliary load or amplifier that comes on too early, and for each sequence that takes too long. */
    public long lateness() {
        long charge = 0;
        for (RoleOrder order : orders) {
            charge += order.lateness();
        }
        long limit = compiled.limits.durationMicros;
        if (limit == Long.MAX_VALUE) {
            return charge;
        }
        if (!compiled.hasClocks) {
            return charge + Charges.late(durationMicros() - limit);
        }
        for (RoleOrder order : orders) {
            charge += Charges.late(order.durationMicros() - limit);
        }
        return charge;
    }
}
