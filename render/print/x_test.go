package print
import ("testing";"context";"fmt";"time";"strings";"os/exec")
func TestX(t *testing.T){
 pages:=map[string]string{
  "cells100k":"<!doctype html><table>"+strings.Repeat("<tr><td>12 g<td>wax<td>pan",25000-10),
  "cells40k":"<!doctype html><table>"+strings.Repeat("<tr><td>12 g<td>wax<td>pan",10000-10),
  "text4M":"<!doctype html><p>"+strings.Repeat("word ",maxWritten/5-100),
 }
 for n,p:=range pages {
  b:=fresh(t,Settings{PageTimeout:3*time.Minute})
  stop:=make(chan bool); peak:=0
  go func(){ for { select{case <-stop: return; case <-time.After(300*time.Millisecond):}
    o,_:=exec.Command("sh","-c",fmt.Sprintf("ps -e -o pgid=,rss= | awk '$1==%d{s+=$2}END{print s}'",b.current.cmd.Process.Pid)).Output(); var k int; fmt.Sscan(string(o),&k); if k>peak {peak=k} } }()
  t0:=time.Now()
  f,err:=b.PDF(context.Background(),[]byte(p),Options{Paper:A5})
  close(stop); b.Close()
  fmt.Println(n,len(p),time.Since(t0),"peak MB",peak/1024,len(f),err)
 }
}
