#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""session.py FILE: a session manager for one program. It notes in FILE, a line each, what it is
told: who holds the session up (the reason given and what is held up), lets go of it, or answers that
it may end. It prints a line once it is there. USR1 makes it end the session, as its user would: it
asks first."""
import signal
import sys

from gi.repository import Gio, GLib

NAME, CLIENT = 'org.gnome.SessionManager', '/org/gnome/SessionManager/Client1'
PRIVATE = NAME + '.ClientPrivate'
NODE = Gio.DBusNodeInfo.new_for_xml(f'''<node>
  <interface name="{NAME}">
    <method name="RegisterClient">
      <arg type="s" direction="in"/><arg type="s" direction="in"/><arg type="o" direction="out"/>
    </method>
    <method name="UnregisterClient"><arg type="o" direction="in"/></method>
    <method name="Inhibit">
      <arg type="s" direction="in"/><arg type="u" direction="in"/>
      <arg type="s" direction="in"/><arg type="u" direction="in"/><arg type="u" direction="out"/>
    </method>
    <method name="Uninhibit"><arg type="u" direction="in"/></method>
  </interface>
  <interface name="{PRIVATE}">
    <method name="EndSessionResponse">
      <arg type="b" direction="in"/><arg type="s" direction="in"/>
    </method>
    <signal name="QueryEndSession"><arg type="u"/></signal>
    <signal name="EndSession"><arg type="u"/></signal>
  </interface>
</node>''')
bus = Gio.bus_get_sync(Gio.BusType.SESSION)
held = 0
is_asking = False


def note(*words):
    with open(sys.argv[1], 'a') as file:
        print(*words, file=file)


def tell(what):
    bus.emit_signal(None, CLIENT, PRIVATE, what, GLib.Variant('(u)', (0,)))


def ask():
    global is_asking
    is_asking = True
    tell('QueryEndSession')
    return True


def on_call(_bus, _sender, _path, _interface, method, arguments, call):
    global held, is_asking
    values, answer = arguments.unpack(), None
    if method == 'RegisterClient':
        answer = GLib.Variant('(o)', (CLIENT,))
    elif method == 'Inhibit':
        held += 1
        note('held', *values[2:])
        answer = GLib.Variant('(u)', (held,))
    elif method == 'Uninhibit':
        note('let go')
    elif method == 'EndSessionResponse':
        note('may end' if values[0] else 'may not end')
        if is_asking:
            is_asking = False
            tell('EndSession')
    call.return_value(answer)


def main():
    bus.register_object('/org/gnome/SessionManager', NODE.interfaces[0], on_call, None, None)
    bus.register_object(CLIENT, NODE.interfaces[1], on_call, None, None)
    Gio.bus_own_name_on_connection(bus, NAME, Gio.BusNameOwnerFlags.NONE,
                                   lambda *_: print('there', flush=True), None)
    GLib.unix_signal_add(GLib.PRIORITY_DEFAULT, signal.SIGUSR1, ask)
    GLib.MainLoop().run()


main()
