package rosinbook.web;

import io.javalin.http.Context;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** From where a request comes, as tries are counted. */
final class ClientAddress {
    private static final int LONGEST = 60;
    private static final Pattern WITH_PORT = Pattern.compile("\\[([^\\]]*)](?::\\d+)?|([^:]*):\\d+");

    /** RFC 4291, section 2.5.4: the network; whoever has one has all its addresses. */
    private static final int NETWORK_BYTES = 8;

    private ClientAddress() {}

    /**
     * An IPv4 address, or the network of an IPv6 one. Behind a proxy of ours: the last entry of {@code X-Forwarded-For},
     * which the proxy wrote itself. Those before it are whatever the client sent.
     */
    static String of(Context exchange, Listening listening) {
        if (!listening.isBehindProxy()) {
            return counted(exchange.ip());
        }
        List<String> lines = Collections.list(exchange.req().getHeaders("X-Forwarded-For"));
        String told = lines.isEmpty() ? "" : lines.get(lines.size() - 1);
        String last = told.substring(told.lastIndexOf(',') + 1).strip();
        return counted(last.isEmpty() || last.length() > LONGEST ? exchange.ip() : last);
    }

    private static String counted(String text) {
        Matcher withPort = WITH_PORT.matcher(text);
        String bare = !withPort.matches() ? text : withPort.group(1) == null ? withPort.group(2) : withPort.group(1);
        String address = bare.replaceFirst("%.*", "");
        if (!address.contains(":")) {
            return address;
        }
        try {
            // In brackets nothing is taken for a name, and looked up.
            InetAddress known = InetAddress.getByName("[" + address + "]");
            return known instanceof Inet4Address
                    ? known.getHostAddress()
                    : HexFormat.of().formatHex(known.getAddress(), 0, NETWORK_BYTES);
        } catch (UnknownHostException noAddress) {
            return address;
        }
    }
}
