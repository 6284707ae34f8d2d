package evenrise.solver.grid;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.List;

/**
 * Where workers listen: machines by name or address, each with a port of its own or the usual ones. A machine may run
 * several workers; each takes the first of the usual ports that is free.
 */
public record GridHosts(List<Host> hosts) {
    public static final int USUAL_PORT = 27_650;
    /** So many ports from the usual one on. */
    public static final int USUAL_PORTS = 20;

    private static final int MOST_PORT = 65_535;
    private static final int LEAST_PORT = 1_024;

    /** @param lastPort of those that are tried; the first alone where one is named */
    public record Host(String name, int firstPort, int lastPort) {
        /** As it is written: with the port where that was named. */
        @Override
        public String toString() {
            return firstPort == lastPort ? name + ":" + firstPort : name;
        }

        /** Whether nobody but this machine is meant. */
        boolean isLoopback() {
            try {
                return InetAddress.getByName(bare(name)).isLoopbackAddress();
            } catch (UnknownHostException e) {
                return false;
            }
        }
    }

    public GridHosts {
        hosts = List.copyOf(hosts);
        if (hosts.isEmpty()) {
            throw new IllegalArgumentException("no host is named");
        }
    }

    /**
     * @param text HOST or HOST:PORT, parted by commas; an IPv6 address in brackets
     * @throws IllegalArgumentException that says what is wrong
     */
    public static GridHosts of(String text) {
        List<Host> hosts = new ArrayList<>();
        for (String each : text.split(",", -1)) {
            hosts.add(host(each.strip()));
        }
        return new GridHosts(hosts);
    }

    private static Host host(String text) {
        int colon = text.lastIndexOf(':');
        boolean hasPort = colon > text.lastIndexOf(']') && text.indexOf(':') == colon || text.contains("]:");
        String name = hasPort ? text.substring(0, colon) : text;
        if (name.isEmpty() || name.chars().anyMatch(Character::isWhitespace)) {
            throw new IllegalArgumentException("'" + text + "' is no host, expected HOST or HOST:PORT");
        }
        return hasPort
                ? new Host(name, port(text.substring(colon + 1)), port(text.substring(colon + 1)))
                : new Host(name, USUAL_PORT, USUAL_PORT + USUAL_PORTS - 1);
    }

    private static int port(String text) {
        if (!text.matches("\\d{1,5}") || Integer.parseInt(text) < LEAST_PORT || Integer.parseInt(text) > MOST_PORT) {
            throw new IllegalArgumentException("port is '" + text + "', expected " + LEAST_PORT + " to " + MOST_PORT);
        }
        return Integer.parseInt(text);
    }

    /** Every port that is tried, as {@code host:port}. */
    public List<String> addresses() {
        List<String> addresses = new ArrayList<>();
        for (Host host : hosts) {
            for (int port = host.firstPort(); port <= host.lastPort(); port++) {
                addresses.add(host.name() + ":" + port);
            }
        }
        return addresses;
    }

    /** Whether every host is this machine, by an address that no other machine reaches. */
    public boolean areLoopback() {
        return hosts.stream().allMatch(Host::isLoopback);
    }

    /** Name of the first, without brackets. */
    public String first() {
        return bare(hosts.get(0).name());
    }

    private static String bare(String name) {
        return name.startsWith("[") && name.endsWith("]") ? name.substring(1, name.length() - 1) : name;
    }

    @Override
    public String toString() {
        return String.join(", ", hosts.stream().map(Host::toString).toList());
    }
}
